//! Every kind of entry, each declared once: name, body, group, undo, subject, references.
//!
//! To add a kind, write its body in a module of its own and add one row to the table below. The
//! fold then asks where in the field book it is kept, and the sentences ask how it is named; the
//! compiler reports both.
//!
//! A body is written once and its bytes are kept, so the shape of a body only ever gains optional
//! fields.

pub use super::answers::{About, Redo, SettledAtDesk, Strike, Undo};
pub use super::change::ChangeFound;
pub use super::corner::{Corner, Side, Turn};
pub use super::edition::Edition;
pub use super::job_started::JobStarted;
pub use super::packet_notes::{FrozenEntries, LastOf, PacketFrozen, PacketSent, SendStage};
pub use super::photo_facts::{PhotoDistance, PhotoFacts, PhotoPlace, PhotoWord};
pub use super::photo_taken::{ClipTaken, PhotoFrom, PhotoTaken, TiltFelt};
pub use super::reading::{CannotGet, Followed, HowRead, Reading};
pub use super::roof_observed::{
    CoveringObserved, DeckKind, DeckObserved, ObservedOverLeg, PenetrationAdded, RateSet,
    RoofObserved, SaddleObserved,
};
pub use super::slope::{EndKind, GableMark, GableSpot, LegEnd, PitchBooked, PitchRead};
pub use super::subject::{RoofQuestion, Subject};
pub use super::tape_marks::TapeMarks;
pub use super::thing::{DeckSizeOf, ItemKind, SizeOf, Thing};
pub use super::visit::{Found, Hazard, Permission, VisitNote, WalkTarget};
use uuid::Uuid;

/// What a kind of entry is for the rest of the program.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Group {
    /// A fact about the house or the job.
    Fact,
    /// An answer about entries that its body names; it belongs to their story.
    Answer,
    /// A strike, undo or redo: it belongs to the story of the entries that it supersedes.
    Retraction,
    /// A note about packets: it is no step of the job, enters no packet and no digest of one.
    PacketNote,
}

/// What Undo and Redo do with a kind of entry.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum UndoRole {
    /// Undo takes it back; a new one leaves nothing to redo.
    Step,
    /// It is an undo: Redo takes it back.
    Undo,
    /// Undo and Redo pass over it.
    PassedOver,
}

/// Declares [`Kind`] from one row per kind.
///
/// A row: `Variant(Body): "name", version, group, undo role`, then optionally `about` (the subject
/// of a body) and `refs` (the entry ids and photo hashes that a body names).
macro_rules! kinds {
    // The value of a row's optional function for a body, else the default.
    (@call $value:ident: $body:ty, $default:expr) => {{
        let _ = $value;
        $default
    }};
    (@call $value:ident: $body:ty, $default:expr, $function:expr) => {{
        let function: fn(&$body) -> _ = $function;
        function($value)
    }};
    ($(
        $(#[doc = $doc:literal])+
        $kind:ident($body:ident): $name:literal, $version:literal, $group:ident, $undo:ident
        $(, about $about:expr)?
        $(, refs $refs:expr)?;
    )+) => {
        /// One kind of entry and its body.
        #[derive(Clone, Debug, PartialEq)]
        pub enum Kind {
            $($(#[doc = $doc])+ $kind($body),)+
        }

        impl Kind {
            /// Returns its name in an entry.
            #[must_use]
            pub fn name(&self) -> &'static str {
                match self {
                    $(Kind::$kind(_) => $name,)+
                }
            }

            /// Returns the version of its body that this program writes.
            #[must_use]
            pub fn version(&self) -> u32 {
                match self {
                    $(Kind::$kind(_) => $version,)+
                }
            }

            /// Returns the group of the kind.
            #[must_use]
            pub fn group(&self) -> Group {
                match self {
                    $(Kind::$kind(_) => Group::$group,)+
                }
            }

            /// Returns the group of the kind with this name, also if a newer version wrote the
            /// entry; `None` if the kind is unknown.
            #[must_use]
            pub fn group_of_name(name: &str) -> Option<Group> {
                match name {
                    $($name => Some(Group::$group),)+
                    _ => None,
                }
            }

            /// Returns what Undo and Redo do with the kind.
            #[must_use]
            pub fn undo_role(&self) -> UndoRole {
                match self {
                    $(Kind::$kind(_) => UndoRole::$undo,)+
                }
            }

            /// Returns the subject of the entry; `None` if its body has no subject of its own.
            #[must_use]
            pub fn subject(&self) -> Option<Subject> {
                match self {
                    $(Kind::$kind(body) => kinds!(@call body: $body, None $(, $about)?),)+
                }
            }

            /// Returns the entry ids and photo hashes that the body names.
            #[must_use]
            pub fn refs(&self) -> Vec<String> {
                match self {
                    $(Kind::$kind(body) => kinds!(@call body: $body, Vec::new() $(, $refs)?),)+
                }
            }

            /// Returns the body as JSON text, as it is stored.
            #[must_use]
            pub fn body(&self) -> String {
                let text = match self {
                    $(Kind::$kind(body) => serde_json::to_string(body),)+
                };
                // Numbers in a body are finite and keys are strings, so this cannot fail; `null`
                // would parse as an unknown body, never as a wrong one.
                text.unwrap_or_else(|_| "null".to_owned())
            }

            /// Parses a body and ignores unknown fields; `None` if the kind is unknown or the body
            /// does not fit it.
            #[must_use]
            pub fn parse(name: &str, body: &str) -> Option<Kind> {
                match name {
                    $($name => serde_json::from_str(body).ok().map(Kind::$kind),)+
                    _ => None,
                }
            }
        }
    };
}

kinds! {
    /// A job starts.
    JobStarted(JobStarted): "job_started", 1, Fact, PassedOver;

    /// A value as measured.
    Reading(Reading): "reading", 1, Fact, Step,
        about |reading| Some(Subject::Thing(reading.thing.clone()));

    /// The read-back of a reading was confirmed.
    ReadBackRight(About): "read_back_right", 1, Answer, PassedOver,
        refs |about| vec![about.entry.to_string()];

    /// The walker turned at the far corner of a leg.
    Corner(Corner): "corner", 1, Fact, Step,
        about |corner| Some(Subject::CornerAfter(corner.after_leg));

    /// A length cannot be read; it is computed from the others.
    CannotGet(CannotGet): "cannot_get", 1, Fact, Step,
        about |lack| Some(Subject::Thing(lack.thing.clone()));

    /// What rises at a leg: a slope, a gable, a wall.
    LegEnd(LegEnd): "leg_end", 1, Fact, Step,
        about |end| Some(Subject::EndOf(end.leg));

    /// A measurement of a face's pitch.
    Pitch(PitchBooked): "pitch", 1, Fact, Step,
        about |pitch| Some(Subject::PitchOf(pitch.leg));

    /// A penetration of the roof.
    Penetration(PenetrationAdded): "penetration", 1, Fact, Step,
        about |penetration| Some(Subject::Thing(penetration.thing()));

    /// The covering of the existing roof.
    Covering(CoveringObserved): "covering", 1, Fact, Step,
        about |covering| Some(Subject::CoveringAt(covering.leg));

    /// The deck under the covering.
    Deck(DeckObserved): "deck", 1, Fact, Step,
        about |deck| Some(Subject::DeckAt(deck.leg));

    /// An observation of the roof over a leg, compared with the computed roof.
    RoofObserved(RoofObserved): "roof_seen", 1, Fact, Step,
        about |seen| Some(Subject::RoofObservedAt(seen.leg, seen.over.into()));

    /// A rate of the firm, changed for this job.
    Rate(RateSet): "rate", 1, Fact, Step,
        about |rate| Some(Subject::Rate(rate.key.clone()));

    /// A note of a visit.
    Visit(VisitNote): "visit", 1, Fact, Step,
        about |note| note.about().map(Subject::Visit);

    /// Damage found after the tear-off.
    Change(ChangeFound): "change", 1, Fact, Step,
        about |change| Some(Subject::Thing(change.thing()));

    /// A photo.
    Photo(PhotoTaken): "photo", 1, Fact, Step,
        about |photo| photo.of.clone().map(Subject::Thing),
        refs |photo| vec![photo.sha256.clone()];

    /// A recorded remark, to be typed later.
    Clip(ClipTaken): "clip", 1, Fact, Step,
        about |clip| clip.of.clone().map(Subject::Thing),
        refs |clip| vec![clip.sha256.clone()];

    /// A fact about photos: what they show, from what distance, who may see them.
    PhotoFacts(PhotoFacts): "photo_said", 1, Fact, Step,
        refs |facts| facts.photos.iter().map(Uuid::to_string).collect();

    /// A person reviewed entries at the desk and kept them as recorded.
    SettledAtDesk(SettledAtDesk): "settled_at_desk", 1, Answer, Step,
        refs |settled| settled.entries.iter().map(Uuid::to_string).collect();

    /// Takes the superseded entries out of force and keeps them readable.
    Strike(Strike): "strike", 1, Retraction, Step;

    /// Takes back a strike or the last step.
    Undo(Undo): "undo", 1, Retraction, Undo;

    /// Takes back an undo, so that its step is in force again.
    Redo(Redo): "redo", 1, Retraction, PassedOver;

    /// A packet was made.
    PacketFrozen(PacketFrozen): "packet_frozen", 1, PacketNote, PassedOver;

    /// A packet is to go to a person, or how far it has gone.
    PacketSent(PacketSent): "packet_sent", 1, PacketNote, PassedOver;
}

impl Kind {
    /// Whether a person can strike an entry of this kind.
    #[must_use]
    pub fn can_be_struck(&self) -> bool {
        self.group() == Group::Fact && self.undo_role() == UndoRole::Step
    }
}

//! Labels: every text without arguments, from the name of a button to a caution.
//!
//! A group lists its labels in `label/<group>.rs`; `label/en/<group>.rs` and `label/es/<group>.rs`
//! hold their texts. The page gets all of them as one generated table: see [`labels_module`].

pub mod arrive;
pub mod camera;
pub mod caution;
pub mod change;
pub mod check;
pub mod clips;
pub mod desk;
pub mod field_book;
pub mod frame;
pub mod import_export;
pub mod job_file;
pub mod other_copies;
pub mod packet;
pub mod paper;
pub mod photo;
pub mod pitch;
pub mod place;
pub mod plan;
pub mod send;
pub mod settings;
pub mod solid;
pub mod state;
pub mod takeoff;
pub mod thing;
pub mod today;
pub mod walk_round;

mod en;
mod es;
mod typescript;

pub use typescript::labels_module;

use crate::{Kind, Language};

/// Makes [`Label`] from its groups: one line a group.
macro_rules! groups {
    ($( $(#[$doc:meta])* $group:ident ( $type:path ) ; )+) => {
        /// A label, by the group to which it belongs.
        #[derive(Clone, Copy, Debug, PartialEq, Eq)]
        pub enum Label {
            $( $(#[$doc])* $group($type), )+
        }

        $(
            impl From<$type> for Label {
                fn from(label: $type) -> Label {
                    Label::$group(label)
                }
            }
        )+

        impl Label {
            /// Every label, group by group.
            #[must_use]
            pub fn all() -> Vec<Label> {
                let mut all = Vec::new();
                $( all.extend(<$type>::ALL.iter().copied().map(Label::$group)); )+
                all
            }

            /// The id of this label: `frame.undo`.
            #[must_use]
            pub fn id(self) -> String {
                match self { $( Label::$group(label) => label.id(), )+ }
            }

            /// This label in a language.
            #[must_use]
            pub const fn text(self, language: Language) -> &'static str {
                match self { $( Label::$group(label) => label.text(language), )+ }
            }

            /// Whether it is a control's name, a title or a whole sentence.
            #[must_use]
            pub const fn kind(self) -> Kind {
                match self { $( Label::$group(label) => label.kind(), )+ }
            }

            /// It may read alike in both languages.
            #[must_use]
            pub const fn may_be_same(self) -> bool {
                match self { $( Label::$group(label) => label.may_be_same(), )+ }
            }
        }
    };
}

groups! {
    /// Names of the places of the program.
    Place(place::PlaceLabel);
    /// How well a thing is known.
    State(state::StateLabel);
    /// What every place shows around its own controls.
    Frame(frame::FrameLabel);
    /// Settings of this device.
    Settings(settings::SettingsLabel);
    /// Copies on other devices: joining a hub, letting a device join.
    OtherCopies(other_copies::OtherCopiesLabel);
    /// Copies carried by hand as files.
    ImportExport(import_export::ImportExportLabel);
    /// Today: the jobs and the search over all of them.
    Today(today::TodayLabel);
    /// Arrive: the front, the people, permissions, hazards, promises.
    Arrive(arrive::ArriveLabel);
    /// Cautions at the moment of choice: whole the first time each day, then one line.
    Caution(caution::CautionLabel);
    /// Walk-round: photos of each part of the house, and what to look for.
    WalkRound(walk_round::WalkRoundLabel);
    /// The camera in the page.
    Camera(camera::CameraLabel);
    /// What a photo shows, from how far, and its place in the job.
    Photo(photo::PhotoLabel);
    /// Field book: the readings, the keypad, the read-back and the corner pad.
    FieldBook(field_book::FieldBookLabel);
    /// Readings recorded as sound, to be typed later.
    Clips(clips::ClipsLabel);
    /// What can be done with one thing of a list.
    Thing(thing::ThingLabel);
    /// Plan: the outline and the roof, drawn and as lists.
    Plan(plan::PlanLabel);
    /// The 3D view of the roof.
    Solid(solid::SolidLabel);
    /// The pitch of one face: by phone, level and tape, photo or number.
    Pitch(pitch::PitchLabel);
    /// Leave-site check: what is open before driving off.
    Check(check::CheckLabel);
    /// Takeoff: quantities, order list and price.
    Takeoff(takeoff::TakeoffLabel);
    /// Job file: making packets and their papers.
    JobFile(job_file::JobFileLabel);
    /// Changes found at tear-off.
    Change(change::ChangeLabel);
    /// Handing a packet on.
    Send(send::SendLabel);
    /// The review at the desk by single keys.
    Desk(desk::DeskLabel);
    /// Headings of the start page of a packet and titles of its files.
    Packet(packet::PacketLabel);
    /// Titles, headings, table heads, cells and fill-in lines of papers.
    Paper(paper::PaperLabel);
}

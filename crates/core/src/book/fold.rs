//! Folds entries into one field book: the same for the same set, in any order, with any repeats.

use super::acts::Act;
use super::entry::{Entry, ParsedBody};
use super::heads::{Heads, heads};
use super::kinds::{
    ChangeFound, ClipTaken, Corner, CoveringObserved, DeckObserved, EndKind, Followed, Group,
    HowRead, Kind, PacketFrozen, PacketSent, PenetrationAdded, PhotoFacts, PhotoTaken, PitchRead,
    RateSet, RoofObserved, TapeMarks, Thing, VisitNote,
};
use std::collections::{BTreeMap, BTreeSet};
use uuid::Uuid;

/// One job, folded from its entries. Lists are in display order.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct FieldBook {
    /// Street address as entered.
    pub address: String,
    /// The job is the practice house.
    pub pretend: bool,
    /// Every reading, struck ones included.
    pub readings: Vec<BookedReading>,
    /// Corners in force, by the leg that ends at each.
    pub corners: Vec<(Uuid, Corner)>,
    /// Things that cannot be read, with the reason.
    pub cannot_get: Vec<(Uuid, Thing, Option<String>)>,
    /// What rises at each leg that has an answer: (entry, leg from 1, end).
    pub leg_ends: Vec<(Uuid, u32, EndKind)>,
    /// Every pitch measurement, struck ones included.
    pub pitches: Vec<BookedPitch>,
    /// Penetrations of the roof, struck ones included.
    pub penetrations: Vec<Noted<PenetrationAdded>>,
    /// Observations of the existing covering, struck ones included.
    pub coverings: Vec<Noted<CoveringObserved>>,
    /// Observations of the deck, struck ones included.
    pub decks: Vec<Noted<DeckObserved>>,
    /// Observations of the roof, compared with the computed one, struck ones included.
    pub roof_seen: Vec<Noted<RoofObserved>>,
    /// Rates of the firm changed for this job, struck ones included.
    pub rates: Vec<Noted<RateSet>>,
    /// Notes of the visits, struck ones included.
    pub visits: Vec<Noted<VisitNote>>,
    /// Damage found after the tear-off, struck ones included.
    pub changes: Vec<Noted<ChangeFound>>,
    /// Photos in force.
    pub photos: Vec<(Uuid, PhotoTaken)>,
    /// Recorded remarks, typed and struck ones included.
    pub clips: Vec<Noted<ClipTaken>>,
    /// Facts about photos in force.
    pub photo_words: Vec<(Uuid, PhotoFacts)>,
    /// Entries that a person reviewed at the desk and kept; the review changes no reading.
    pub settled: BTreeSet<Uuid>,
    /// Packets made of this job.
    pub frozen: Vec<(Uuid, PacketFrozen)>,
    /// Recipients of packets, and how far each packet has gone.
    pub sent: Vec<Noted<PacketSent>>,
    /// Every entry of a known kind except notes about packets.
    pub acts: Vec<Act>,
    /// Ids of entries of an unknown kind, or whose body does not parse.
    pub unknown: Vec<Uuid>,
    /// Ids of entries of a known kind written by a newer version; their known fields are used.
    pub newer: Vec<Uuid>,
    /// Ids of entries that supersede themselves or form a cycle; those links are ignored.
    pub circular: Vec<Uuid>,
    /// Ids that are superseded but not on this device yet.
    pub awaited: Vec<Uuid>,
    /// Ids with two different contents; the lesser in byte order is folded.
    pub id_conflicts: Vec<Uuid>,
}

/// A reading, with the entry that superseded it.
#[derive(Clone, Debug, PartialEq)]
pub struct BookedReading {
    /// Its entry.
    pub entry: Uuid,
    /// What was measured.
    pub thing: Thing,
    /// The tape text.
    pub text: String,
    /// How the tape is marked.
    pub tape: TapeMarks,
    /// How the value was obtained.
    pub how: HowRead,
    /// What the tape followed.
    pub followed: Followed,
    /// The reader saw no earlier value.
    pub blind: bool,
    /// The read-back was confirmed.
    pub read_back: bool,
    /// Local time with offset, RFC 3339.
    pub local_time: String,
    /// The person who recorded it.
    pub author: String,
    /// The device that recorded it.
    pub device: Uuid,
    /// The entry that superseded it; `None` if it is in force.
    pub struck: Option<SupersededBy>,
}

/// A pitch measurement, with the entry that superseded it.
#[derive(Clone, Debug, PartialEq)]
pub struct BookedPitch {
    /// Its entry.
    pub entry: Uuid,
    /// The leg from which the face rises, from 1.
    pub leg: u32,
    /// How it was measured, with the values.
    pub read: PitchRead,
    /// Local time with offset, RFC 3339.
    pub local_time: String,
    /// The person who recorded it.
    pub author: String,
    /// The device that recorded it.
    pub device: Uuid,
    /// The entry that superseded it; `None` if it is in force.
    pub struck: Option<SupersededBy>,
}

/// A recorded body, with the entry that superseded it.
#[derive(Clone, Debug, PartialEq)]
pub struct Noted<T> {
    /// Its entry.
    pub entry: Uuid,
    /// The body.
    pub what: T,
    /// Local time with offset, RFC 3339.
    pub local_time: String,
    /// The person who recorded it.
    pub author: String,
    /// The device that recorded it.
    pub device: Uuid,
    /// The entry that superseded it; `None` if it is in force.
    pub struck: Option<SupersededBy>,
}

impl<T> Noted<T> {
    fn new(act: &Act, what: T, struck: Option<SupersededBy>) -> Noted<T> {
        Noted {
            entry: act.entry,
            what,
            local_time: act.local_time.clone(),
            author: act.author.clone(),
            device: act.device,
            struck,
        }
    }
}

/// The entry in force that supersedes another; the earliest if there are several.
#[derive(Clone, Debug, PartialEq)]
pub struct SupersededBy {
    /// Its entry.
    pub by: Uuid,
    /// What kind of entry it is.
    pub how: TakenOut,
    /// Why; `None` if no reason was given.
    pub reason: Option<String>,
    /// Local time with offset, RFC 3339.
    pub local_time: String,
    /// The person who recorded it.
    pub author: String,
    /// The device that recorded it.
    pub device: Uuid,
}

/// How an entry went out of force.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum TakenOut {
    /// A strike.
    Strike,
    /// An undo.
    Undo,
    /// A newer entry about the same subject.
    Replaced,
}

/// Folds a set of entries into a field book: the same for the same set in any order.
///
/// A repeated entry counts once. Of two different entries with one id the lesser in byte order is
/// folded and the id is flagged, so that the order of arrival does not matter.
pub fn fold<'a>(entries: impl IntoIterator<Item = &'a Entry>) -> FieldBook {
    let mut book = FieldBook::default();
    let set = distinct(entries, &mut book);
    let links = set
        .iter()
        .map(|(id, entry)| (*id, entry.supersedes.as_slice()))
        .collect();
    let heads = heads(&links);
    let mut in_order: Vec<&Entry> = set.values().copied().collect();
    in_order.sort_by_key(|entry| entry.display_order());

    let mut acts = Vec::new();
    for entry in in_order {
        let kind = match entry.parsed_body() {
            ParsedBody::Known(kind) => kind,
            ParsedBody::Newer(kind) => {
                book.newer.push(entry.id);
                kind
            }
            ParsedBody::Unknown => {
                book.unknown.push(entry.id);
                continue;
            }
        };
        acts.push(Act {
            entry: entry.id,
            device: entry.device,
            author: entry.author.clone(),
            local_time: entry.local_time.clone(),
            supersedes: entry.supersedes.clone(),
            in_force: heads.in_force.contains(&entry.id),
            kind,
        });
    }
    let read_back = read_backs(&acts);
    for act in acts {
        let struck = superseded_by(act.entry, &heads, &set);
        book.keep(&act, struck, &read_back);
        match act.kind.group() {
            Group::Fact | Group::Answer | Group::Retraction => book.acts.push(act),
            Group::PacketNote => {}
        }
    }
    book.corners.sort_by_key(|(_, corner)| corner.after_leg);
    book.leg_ends.sort_by_key(|(_, leg, _)| *leg);
    book.circular = heads.circular.into_iter().collect();
    book.awaited = heads.awaited.into_iter().collect();
    book
}

impl FieldBook {
    /// Keeps one act in the list of its kind; acts are given in display order. Lists of [`Noted`]
    /// and readings keep superseded entries, the others only those in force.
    fn keep(&mut self, act: &Act, struck: Option<SupersededBy>, read_back: &BTreeSet<Uuid>) {
        match act.kind.clone() {
            Kind::Penetration(what) => self.penetrations.push(Noted::new(act, what, struck)),
            Kind::Covering(what) => self.coverings.push(Noted::new(act, what, struck)),
            Kind::Deck(what) => self.decks.push(Noted::new(act, what, struck)),
            Kind::RoofObserved(what) => self.roof_seen.push(Noted::new(act, what, struck)),
            Kind::Rate(what) => self.rates.push(Noted::new(act, what, struck)),
            Kind::Visit(what) => self.visits.push(Noted::new(act, what, struck)),
            Kind::Clip(what) => self.clips.push(Noted::new(act, what, struck)),
            Kind::Change(what) => self.changes.push(Noted::new(act, what, struck)),
            // A later sending replaces no earlier one.
            Kind::PacketSent(what) => self.sent.push(Noted::new(act, what, None)),
            Kind::PacketFrozen(frozen) => self.frozen.push((act.entry, frozen)),
            Kind::Reading(reading) => self.readings.push(BookedReading {
                entry: act.entry,
                thing: reading.thing,
                text: reading.text,
                tape: reading.tape,
                how: reading.how,
                followed: reading.followed,
                blind: reading.blind,
                read_back: read_back.contains(&act.entry),
                local_time: act.local_time.clone(),
                author: act.author.clone(),
                device: act.device,
                struck,
            }),
            Kind::Pitch(pitch) => self.pitches.push(BookedPitch {
                entry: act.entry,
                leg: pitch.leg,
                read: pitch.read,
                local_time: act.local_time.clone(),
                author: act.author.clone(),
                device: act.device,
                struck,
            }),
            Kind::JobStarted(_)
            | Kind::Corner(_)
            | Kind::CannotGet(_)
            | Kind::LegEnd(_)
            | Kind::Photo(_)
            | Kind::PhotoFacts(_)
            | Kind::SettledAtDesk(_)
                if !act.in_force => {}
            Kind::JobStarted(job) => {
                self.address = job.address;
                self.pretend = job.pretend;
            }
            Kind::Corner(corner) => self.corners.push((act.entry, corner)),
            Kind::CannotGet(lack) => self.cannot_get.push((act.entry, lack.thing, lack.reason)),
            Kind::LegEnd(end) => self.leg_ends.push((act.entry, end.leg, end.end)),
            Kind::Photo(photo) => self.photos.push((act.entry, photo)),
            Kind::PhotoFacts(facts) => self.photo_words.push((act.entry, facts)),
            Kind::SettledAtDesk(settled) => self.settled.extend(settled.entries),
            Kind::ReadBackRight(_) | Kind::Strike(_) | Kind::Undo(_) | Kind::Redo(_) => {}
        }
    }

    /// Returns the notes of the visits in force, in display order.
    pub fn visited(&self) -> impl DoubleEndedIterator<Item = &Noted<VisitNote>> {
        self.visits.iter().filter(|note| note.struck.is_none())
    }

    /// Returns the readings of a thing in force, in display order.
    pub fn in_force_of<'a>(&'a self, thing: &'a Thing) -> impl Iterator<Item = &'a BookedReading> {
        self.readings
            .iter()
            .filter(move |reading| reading.thing == *thing && reading.struck.is_none())
    }
}

/// Returns the entries by id, and flags ids with two contents.
fn distinct<'a>(
    entries: impl IntoIterator<Item = &'a Entry>,
    book: &mut FieldBook,
) -> BTreeMap<Uuid, &'a Entry> {
    let mut set: BTreeMap<Uuid, &Entry> = BTreeMap::new();
    let mut conflicts = BTreeSet::new();
    for entry in entries {
        let kept = set.entry(entry.id).or_insert(entry);
        if *kept != entry {
            conflicts.insert(entry.id);
            *kept = (*kept).min(entry);
        }
    }
    book.id_conflicts = conflicts.into_iter().collect();
    set
}

/// Returns the readings whose read-back was confirmed.
fn read_backs(acts: &[Act]) -> BTreeSet<Uuid> {
    let in_force = acts.iter().filter(|act| act.in_force);
    let answered = in_force.filter_map(|act| {
        let Kind::ReadBackRight(about) = &act.kind else {
            return None;
        };
        Some(about.entry)
    });
    answered.collect()
}

/// Returns the earliest entry in force that supersedes an entry.
fn superseded_by(id: Uuid, heads: &Heads, set: &BTreeMap<Uuid, &Entry>) -> Option<SupersededBy> {
    let by = heads.out_by.get(&id)?.iter().filter_map(|by| set.get(by));
    let first = by.min_by_key(|by| by.display_order())?;
    let (how, reason) = match first.parsed_body() {
        ParsedBody::Known(Kind::Strike(strike)) | ParsedBody::Newer(Kind::Strike(strike)) => {
            (TakenOut::Strike, strike.reason)
        }
        ParsedBody::Known(Kind::Undo(_)) | ParsedBody::Newer(Kind::Undo(_)) => {
            (TakenOut::Undo, None)
        }
        ParsedBody::Known(_) | ParsedBody::Newer(_) | ParsedBody::Unknown => {
            (TakenOut::Replaced, None)
        }
    };
    Some(SupersededBy {
        by: first.id,
        how,
        reason,
        local_time: first.local_time.clone(),
        author: first.author.clone(),
        device: first.device,
    })
}

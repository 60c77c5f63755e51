//! What a packet says otherwise than the version before it for the same reader, and which entries
//! made the difference.

use crate::edition::Lang;
use crate::job::Job;
use crate::named::Parts;
use crate::said;
use crate::words;
use eavebook_core::book::fold::SupersededBy;
use std::collections::{BTreeMap, BTreeSet};
use uuid::Uuid;

/// One thing that is said otherwise.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Difference {
    /// `leg 4`, `pitch of face Front 1`, `roof area`.
    pub thing: String,
    /// What the version before said; empty where it said nothing of it.
    pub before: String,
    /// What this one says; empty where it says nothing of it any more.
    pub now: String,
    /// The entries booked since that made it so, in the order in which they were booked. A figure
    /// that is worked out rests on all of those that changed a length or a slope.
    pub why: Vec<Uuid>,
}

/// What differs from the version before, in the order of the walk, figures that are worked out
/// last; nothing where there is no version before, or its entries are not here.
pub fn differences(job: &Job) -> Vec<Difference> {
    let Some(before) = job.before else {
        return Vec::new();
    };
    let known: BTreeSet<Uuid> = before.entries.iter().map(|entry| entry.id).collect();
    let then = Sayings::new(before, &known);
    let now = Sayings::new(job, &known);
    let mut all = changed(&then.booked, &now.booked);
    let since: Vec<Uuid> = all.iter().flat_map(|one| one.why.clone()).collect();
    let worked_out = changed(&then.worked_out, &now.worked_out).into_iter();
    all.extend(worked_out.map(|one| Difference {
        why: since.clone(),
        ..one
    }));
    all
}

/// What a version says of one thing, and which entries that the version before did not have.
#[derive(Default)]
struct Saying {
    words: Vec<String>,
    new: Vec<Uuid>,
}

/// What a version says of everything, by thing; each with its place, so that they keep the order in
/// which they are said.
struct Sayings {
    booked: BTreeMap<String, (usize, Saying)>,
    worked_out: BTreeMap<String, (usize, Saying)>,
}

impl Sayings {
    fn new(job: &Job, known: &BTreeSet<Uuid>) -> Sayings {
        let mut booked = SayingCollector {
            known,
            all: BTreeMap::new(),
        };
        let parts = Parts::new(&job.standing(), job.solved);
        for read in &job.book.readings {
            let state = said::state_of(job, read).word();
            let words = format!("{}, {state}", said::in_words(&read.text));
            booked.say(read.thing.name(), words, read.entry, read.struck.as_ref());
        }
        for read in &job.book.pitches {
            let place = parts.places.get((read.leg as usize).saturating_sub(1));
            let face = place.map_or_else(|| format!("over leg {}", read.leg), |place| place.name());
            let words = said::slope(&read.read);
            let thing = format!("pitch of face {face}");
            booked.say(thing, words, read.entry, read.struck.as_ref());
        }
        for noted in &job.book.penetrations {
            let words = format!("on the face of leg {}", noted.what.leg);
            let thing = noted.what.thing().name();
            booked.say(thing, words, noted.entry, noted.struck.as_ref());
        }
        for noted in &job.book.coverings {
            let layers = noted.what.layers.map(|layers| layers.to_string());
            let words = layers.or_else(|| noted.what.kind.clone());
            let words = words.unwrap_or_default();
            booked.say(
                "layers".to_owned(),
                words,
                noted.entry,
                noted.struck.as_ref(),
            );
        }
        for noted in &job.book.decks {
            let words = noted.what.kind.word().to_owned();
            booked.say("deck".to_owned(), words, noted.entry, noted.struck.as_ref());
        }
        for noted in &job.book.roof_seen {
            let words = noted.what.over.words();
            let thing = format!("seen over leg {}", noted.what.leg);
            booked.say(thing, words, noted.entry, noted.struck.as_ref());
        }
        for noted in &job.book.changes {
            let sheets = words::counted(noted.what.sheets as usize, "deck sheet", "deck sheets");
            let agreed = if noted.what.consent {
                "agreed"
            } else {
                "nobody agreed yet"
            };
            let thing = noted.what.thing().name();
            let words = format!("{sheets}, {agreed}");
            booked.say(thing, words, noted.entry, noted.struck.as_ref());
        }
        Sayings {
            booked: booked.all,
            worked_out: worked_out(job, &parts),
        }
    }
}

/// Gathers what is said.
struct SayingCollector<'a> {
    known: &'a BTreeSet<Uuid>,
    all: BTreeMap<String, (usize, Saying)>,
}

impl SayingCollector<'_> {
    fn say(&mut self, thing: String, words: String, entry: Uuid, struck: Option<&SupersededBy>) {
        let place = self.all.len();
        let (_, saying) = self
            .all
            .entry(thing)
            .or_insert_with(|| (place, Saying::default()));
        let by = struck.map(|struck| struck.by);
        let new = [Some(entry), by].into_iter().flatten();
        saying.new.extend(new.filter(|id| !self.known.contains(id)));
        if struck.is_none() {
            saying.words.push(words);
        }
    }
}

fn worked_out(job: &Job, parts: &Parts) -> BTreeMap<String, (usize, Saying)> {
    let mut figures: Vec<(String, String)> = Vec::new();
    for named in &parts.faces {
        let area = words::area_give_or_take(named.area, Lang::En);
        figures.push((
            format!("area of face {}", words::face(named, Lang::En)),
            area,
        ));
    }
    if let Some(solved) = job.solved {
        let area = solved.totals.area;
        figures.extend(area.map(|area| {
            let words = words::area_give_or_take(area, Lang::En);
            ("roof area".to_owned(), words)
        }));
        for (kind, length) in &solved.totals.edges {
            let sigma = parts.sigma_by_kind.get(kind).copied();
            let words = words::length_give_or_take(*length, sigma, Lang::En);
            let kind = words::edge_kind(Some(*kind), Lang::En);
            figures.push((format!("{kind} in all"), words));
        }
    }
    for line in job.takeoff.iter().flat_map(|takeoff| &takeoff.order) {
        let packs = format!("{} {}", line.packs, line.pack.name());
        figures.push((format!("order: {}", line.item), packs));
    }
    let saying = |words| Saying {
        words: vec![words],
        new: Vec::new(),
    };
    let placed = figures.into_iter().enumerate();
    placed
        .map(|(place, (thing, words))| (thing, (place, saying(words))))
        .collect()
}

/// Things that are said otherwise, in the order in which the later version says them, what it no
/// longer speaks of last.
fn changed(
    then: &BTreeMap<String, (usize, Saying)>,
    now: &BTreeMap<String, (usize, Saying)>,
) -> Vec<Difference> {
    let words = |saying: Option<&(usize, Saying)>| {
        let saying = saying.map(|(_, saying)| saying.words.join("; "));
        saying.unwrap_or_default()
    };
    let names: BTreeSet<&String> = then.keys().chain(now.keys()).collect();
    let mut all: Vec<(usize, Difference)> = Vec::new();
    for thing in names {
        let (before, after) = (words(then.get(thing)), words(now.get(thing)));
        if before == after {
            continue;
        }
        let (place, why) = now
            .get(thing)
            .map_or((usize::MAX, Vec::new()), |(place, saying)| {
                (*place, saying.new.clone())
            });
        all.push((
            place,
            Difference {
                thing: thing.clone(),
                before,
                now: after,
                why,
            },
        ));
    }
    all.sort_by(|a, b| (a.0, &a.1.thing).cmp(&(b.0, &b.1.thing)));
    all.into_iter().map(|(_, one)| one).collect()
}

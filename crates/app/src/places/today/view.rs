//! Jobs in a list, and what a search finds in them.

use crate::open_job::OpenJob;
use crate::parts::photos::photos_in;
use crate::parts::{closure, copies, solved_job, things};
use crate::places::job_file::changes;
use crate::places::plan::{faces, items};
use crate::places::today::reply::{FoundView, StopView};
use crate::sentence::{Sentence, sentence};

/// One job in the list.
#[must_use]
pub fn stop(opened: &OpenJob) -> StopView {
    StopView {
        job: opened.job,
        address: opened.book.address.clone(),
        pretend: opened.book.pretend,
        standing: standing(opened),
        copies: copies::words(opened.copies, opened.hub_message.as_deref()),
    }
}

/// "6 legs read. Closes within 2 in."
fn standing(opened: &OpenJob) -> Sentence {
    let laid = opened.laid_out();
    let read = laid.lengths.iter().flatten().count();
    let read = match read {
        0 => return sentence("nothing_read", "Nothing read yet."),
        1 => "1 leg read.".to_owned(),
        many => format!("{many} legs read."),
    };
    let hidden = opened.draft.hidden();
    let seen = solved_job::SolvedJob::new(opened, &laid, None, hidden.as_ref());
    sentence("legs_read", format!("{read} {}", closure::words(&seen).en))
}

/// Things and jobs that hold all of the words; nothing without a word.
#[must_use]
pub fn found(jobs: &[OpenJob], words: &str) -> Vec<FoundView> {
    let words: Vec<String> = words.split_whitespace().map(str::to_lowercase).collect();
    if words.is_empty() {
        return Vec::new();
    }
    let holds = |text: &str| {
        let text = text.to_lowercase();
        words.iter().all(|word| text.contains(word))
    };
    jobs.iter().flat_map(|job| found_in(job, &holds)).collect()
}

fn found_in(opened: &OpenJob, holds: &dyn Fn(&str) -> bool) -> Vec<FoundView> {
    let laid = opened.laid_out();
    let hidden = opened.draft.hidden();
    let solved = solved_job::solve(&laid);
    let seen = solved_job::SolvedJob::new(opened, &laid, solved.as_ref(), hidden.as_ref());
    let address = &opened.book.address;
    let one = |thing: Option<String>, words: String| FoundView {
        job: opened.job,
        address: address.clone(),
        thing,
        words,
    };
    let mut found = Vec::new();
    // What is called by the words stands before what only mentions them.
    let mut mentioned = Vec::new();
    if holds(address) {
        found.push(one(None, address.clone()));
    }
    let legs_and_ties = things::all(&seen)
        .into_iter()
        .map(|thing| things::view(&seen, &thing));
    let items = items::view(&seen, opened.job)
        .into_iter()
        .map(|item| item.item)
        // What nobody looked at answers no question.
        .filter(|item| item.value.is_some() || !item.story.is_empty());
    let faces = faces::view(&seen, opened.job, None, &[]);
    let changes = changes::view(&seen, &faces).changes;
    let faces = faces.into_iter().map(|face| face.face);
    for thing in items.chain(legs_and_ties).chain(faces).chain(changes) {
        let value = thing
            .value
            .map_or_else(String::new, |value| format!(" {}.", value.words));
        let words = format!("{}:{value} {}", thing.title, thing.about);
        // The address is not searched here: it would find every thing of its house.
        if holds(&thing.title) {
            found.push(one(Some(thing.thing), words));
        } else if holds(&with_side(&words)) {
            mentioned.push(one(Some(thing.thing), words));
        }
    }
    found.extend(mentioned);
    found.extend(
        photos_in(&opened.book)
            .filter(|(_, words)| holds(words))
            .map(|(thing, words)| one(Some(thing), words)),
    );
    found
}

/// The words of a thing as somebody asks for it: what lies at the back is on the back side.
fn with_side(words: &str) -> String {
    let sides = ["front", "right", "back", "left"];
    let lower = words.to_lowercase();
    if sides.iter().any(|side| lower.contains(side)) {
        format!("{words} side")
    } else {
        words.to_owned()
    }
}

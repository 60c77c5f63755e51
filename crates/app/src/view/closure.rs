//! The two sums in words, and what to look at again.

use super::names;
use super::solved_job::SolvedJob;
use super::things;
use crate::reply::{ClosureView, ClosureWord, Sentence, SuspectView};
use eavebook_core::book::kinds::Thing;
use eavebook_core::outline::{ClosureState, SlipKind, Suspect};

/// The closure as it is shown.
#[must_use]
pub fn view(seen: &SolvedJob) -> ClosureView {
    let suspects = seen.suspects();
    let shown = suspects.iter().take(2);
    ClosureView {
        state: word(seen),
        words: words(seen),
        more: more(seen, &suspects),
        suspects: shown
            .map(|(thing, suspect)| view_suspect(seen, thing, suspect))
            .collect(),
        or_another: suspects.len() > 2,
    }
}

fn word(seen: &SolvedJob) -> ClosureWord {
    match seen.laid.walk.closure.state {
        ClosureState::Open => ClosureWord::Open,
        ClosureState::Closes => ClosureWord::Closes,
        ClosureState::Gap => ClosureWord::Gap,
        ClosureState::NotChecked => ClosureWord::NotChecked,
    }
}

/// The sentence: "Closes within 2 in.", "To close: 18 ft along, 0 across."
#[must_use]
pub fn words(seen: &SolvedJob) -> Sentence {
    if seen.laid.lengths.iter().all(Option::is_none) {
        return names::said(
            "no_legs",
            "No leg is read yet. Start at any outside corner.",
        );
    }
    if let Some(lost) = seen.laid.directions.iter().position(Option::is_none) {
        let words = format!("Nobody said how the line turns after leg {lost}. Tap that corner.");
        return names::said("corner_wanted", words);
    }
    let closure = &seen.laid.walk.closure;
    if let (ClosureState::Open, Some(thing)) = (closure.state, seen.hidden) {
        // What is left to the start would tell what was read.
        let words = format!("{} is being read again.", things::plain_title(thing));
        return names::said("read_again", words);
    }
    let code = match closure.state {
        ClosureState::Open => "closure_open",
        ClosureState::Closes => "closure_closes",
        ClosureState::Gap => "closure_gap",
        ClosureState::NotChecked => "closure_not_checked",
    };
    names::said(code, closure.words.to_string())
}

/// What to do about it, or what closing does not see.
fn more(seen: &SolvedJob, suspects: &[(Thing, &Suspect)]) -> Option<Sentence> {
    let closure = &seen.laid.walk.closure;
    let name = |(thing, _): &(Thing, &Suspect)| names::name(thing);
    match suspects {
        [] => {}
        [only] => {
            return Some(names::said(
                "look_again",
                format!("Look again at {}.", name(only)),
            ));
        }
        [first, second] => {
            let words = format!("Look again at {} or {}.", name(first), name(second));
            return Some(names::said("look_again", words));
        }
        [first, second, ..] => {
            let words = format!(
                "Look again at {}, {} or another.",
                name(first),
                name(second)
            );
            return Some(names::said("look_again", words));
        }
    }
    if !closure.cannot_see.is_empty() {
        let unseen: Vec<String> = closure
            .cannot_see
            .iter()
            .map(|unseen| unseen.words(1))
            .collect();
        let words = format!("It would not show {}.", either(&unseen));
        return Some(names::said("cannot_see", words));
    }
    let hints: Vec<String> = closure.hints.iter().map(ToString::to_string).collect();
    (!hints.is_empty()).then(|| names::said("gap_hint", hints.join(" ")))
}

fn either(words: &[String]) -> String {
    match words {
        [] => String::new(),
        [only] => only.clone(),
        [most @ .., last] => format!("{} or {last}", most.join(", ")),
    }
}

fn view_suspect(seen: &SolvedJob, thing: &Thing, suspect: &Suspect) -> SuspectView {
    let (code, slip) = match suspect.kind {
        SlipKind::Tens => ("slip_tens", "A ten more or less?"),
        SlipKind::OneFoot => ("slip_one_foot", "A foot more or less?"),
        SlipKind::Transposed => ("slip_transposed", "Swapped digits?"),
        SlipKind::InchesForTenths => ("slip_inches_for_tenths", "Tenths taken for inches?"),
        SlipKind::Overhang => ("slip_overhang", "An overhang left out?"),
        SlipKind::Reversed => ("slip_reversed", "The tape read from its other end?"),
        SlipKind::Other => ("slip_other", "Something else?"),
    };
    // While it is read again, nobody is told what it should be.
    let value = suspect.likely_value.words(seen.round_to());
    let en = if seen.hides(thing) {
        slip.to_owned()
    } else {
        format!("{slip} If so, it would have been {value}.")
    };
    SuspectView {
        thing: names::name(thing),
        title: things::plain_title(thing),
        why: names::said(code, en),
    }
}

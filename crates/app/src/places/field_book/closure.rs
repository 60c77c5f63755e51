//! The closure of the outline, and what to read again.

use crate::names;
use crate::parts::closure::words;
use crate::parts::solved_job::SolvedJob;
use crate::parts::things;
use crate::places::field_book::reply::{ClosureView, ClosureWord, SuspectView};
use crate::sentence::{Sentence, sentence};
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

/// What to do about it, or what closing does not see.
fn more(seen: &SolvedJob, suspects: &[(Thing, &Suspect)]) -> Option<Sentence> {
    let closure = &seen.laid.walk.closure;
    let name = |(thing, _): &(Thing, &Suspect)| names::name(thing);
    match suspects {
        [] => {}
        [only] => {
            return Some(sentence(
                "look_again",
                format!("Look again at {}.", name(only)),
            ));
        }
        [first, second] => {
            let words = format!("Look again at {} or {}.", name(first), name(second));
            return Some(sentence("look_again", words));
        }
        [first, second, ..] => {
            let words = format!(
                "Look again at {}, {} or another.",
                name(first),
                name(second)
            );
            return Some(sentence("look_again", words));
        }
    }
    if !closure.cannot_see.is_empty() {
        let unseen: Vec<String> = closure
            .cannot_see
            .iter()
            .map(|unseen| unseen.words(1))
            .collect();
        let words = format!("It would not show {}.", either(&unseen));
        return Some(sentence("cannot_see", words));
    }
    let hints: Vec<String> = closure.hints.iter().map(ToString::to_string).collect();
    (!hints.is_empty()).then(|| sentence("gap_hint", hints.join(" ")))
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
        why: sentence(code, en),
    }
}

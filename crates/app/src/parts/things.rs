//! Legs and ties as list items, each with its story.

use crate::names;
use crate::parts::reply::{Figure, StoryView, ThingView};
use crate::parts::solved_job::SolvedJob;
use eavebook_core::book::acts::Act;
use eavebook_core::book::agree::in_dispute;
use eavebook_core::book::fold::{BookedReading, SupersededBy, TakenOut};
use eavebook_core::book::house_side::HouseSide;
use eavebook_core::book::kinds::{Followed, HowRead, Kind, Thing, Turn};
use eavebook_core::check::State;
use eavebook_core::units::Tape;
use uuid::Uuid;

/// A leg or a tie as a list item.
#[must_use]
pub fn view(seen: &SolvedJob, thing: &Thing) -> ThingView {
    let state = seen.state(thing);
    ThingView {
        thing: names::name(thing),
        read: Some(thing.clone()),
        title: title(seen, thing),
        state,
        state_word: state.word().to_owned(),
        value: if seen.hides(thing) {
            None
        } else {
            value(seen, thing)
        },
        about: about(seen, thing),
        story: story(seen, thing, state),
        photos: photos(seen, thing),
    }
}

/// `Leg 4, back`; `Tie 2-5`.
#[must_use]
pub fn title(seen: &SolvedJob, thing: &Thing) -> String {
    let plain = plain_title(thing);
    match thing {
        Thing::Leg { leg } => match side(seen, *leg) {
            Some(side) => format!("{plain}, {}", side.word()),
            None => plain,
        },
        Thing::Overhang { leg } => format!("Overhang, leg {leg}"),
        Thing::Tie { .. }
        | Thing::Item { .. }
        | Thing::Size { .. }
        | Thing::Slope { .. }
        | Thing::EaveHeight
        | Thing::RidgeHeight
        | Thing::Deck
        | Thing::DeckSize { .. }
        | Thing::Layers
        | Thing::Change { .. } => plain,
    }
}

/// `Leg 4`: the name of a button.
#[must_use]
pub fn plain_title(thing: &Thing) -> String {
    names::capital(&names::name(thing))
}

/// The side of the house along which a leg runs, as far as the corners say.
#[must_use]
pub fn side(seen: &SolvedJob, leg: u32) -> Option<HouseSide> {
    let index = (leg as usize).checked_sub(1)?;
    seen.laid
        .directions
        .get(index)
        .copied()
        .flatten()
        .map(HouseSide::from_direction)
}

/// Legs of the outline or under way, then whatever else was read, the newest act first; what nobody
/// read yet stands before them.
#[must_use]
pub fn newest_first(seen: &SolvedJob) -> Vec<Thing> {
    let mut things: Vec<(usize, Thing)> = all(seen)
        .into_iter()
        .chain(read_on_roof(seen))
        .map(|thing| (last_act(seen, &thing), thing))
        .collect();
    things.sort_by_key(|(last, _)| std::cmp::Reverse(*last));
    things.into_iter().map(|(_, thing)| thing).collect()
}

/// Every leg and tie in the order of the walk.
#[must_use]
pub fn all(seen: &SolvedJob) -> Vec<Thing> {
    let legs = (1..=seen.laid.legs).filter_map(|leg| u32::try_from(leg).ok());
    let mut things: Vec<Thing> = legs.map(|leg| Thing::Leg { leg }).collect();
    let read = seen.book.readings.iter().map(|read| &read.thing);
    let lacked = seen.book.cannot_get.iter().map(|(_, thing, _)| thing);
    let mut others: Vec<Thing> = read
        .chain(lacked)
        .filter(|thing| thing.is_of_outline() && !things.contains(thing))
        .cloned()
        .collect();
    others.sort();
    others.dedup();
    things.extend(others);
    things
}

/// What was read beside the outline: sizes, overhangs, heights.
#[must_use]
pub fn read_on_roof(seen: &SolvedJob) -> Vec<Thing> {
    let read = seen.book.readings.iter().map(|read| &read.thing);
    let mut things: Vec<Thing> = read
        .filter(|thing| !thing.is_of_outline())
        .cloned()
        .collect();
    things.sort();
    things.dedup();
    things
}

/// Place of the last reading of a thing among all acts; past all of them where there is none.
fn last_act(seen: &SolvedJob, thing: &Thing) -> usize {
    let of_it = |act: &Act| matches!(&act.kind, Kind::Reading(read) if read.thing == *thing);
    let last = seen.book.acts.iter().rposition(of_it);
    last.unwrap_or(usize::MAX)
}

/// What a thing measures: its newest reading in force, else what the others say, with its ±.
#[must_use]
pub fn value(seen: &SolvedJob, thing: &Thing) -> Option<Figure> {
    let in_force = seen.in_force(thing);
    if let Some(read) = in_force.last() {
        return Some(Figure {
            words: in_words(&read.text),
            give_or_take: give_or_take(seen, thing),
        });
    }
    let Thing::Leg { leg } = thing else {
        return None;
    };
    // Worked out from the thing that is being read again, it would tell what that was.
    if seen.hidden.is_some() {
        return None;
    }
    let length = seen.leg_figure(*leg)?.length?.value;
    Some(Figure {
        words: length.words(seen.round_to()),
        give_or_take: give_or_take(seen, thing),
    })
}

/// How surely a leg is known once all readings are weighed together: `± 2 in`.
fn give_or_take(seen: &SolvedJob, thing: &Thing) -> Option<String> {
    let Thing::Leg { leg } = thing else {
        return None;
    };
    let length = seen.leg_figure(*leg)?.length?;
    Some(length.give_or_take(seen.round_to()))
}

/// A booked text in the one form of the screens; one that a later version wrote stays as it is.
#[must_use]
pub fn in_words(text: &str) -> String {
    Tape::read(text).map_or_else(|_| text.to_owned(), |tape| tape.canonical())
}

/// "read twice, meets leg 5 at an inside corner".
fn about(seen: &SolvedJob, thing: &Thing) -> String {
    let in_force = seen.in_force(thing);
    let mut parts = vec![names::times(in_force.len())];
    if in_dispute(&in_force) && !seen.hides(thing) {
        parts.push("the readings differ".to_owned());
    }
    let along_wall = |read: &&BookedReading| read.followed == Followed::Wall;
    if thing.is_of_outline() && in_force.iter().any(along_wall) {
        parts.push("along the wall, so not counted: nobody gave its overhangs".to_owned());
    }
    if in_force.iter().any(|read| read.how == HowRead::Told) {
        parts.push("told by somebody, so compared and not counted".to_owned());
    }
    if in_force.len() == 1 && seen.unproved().contains(thing) {
        parts.push("nothing checks it".to_owned());
    }
    if let Some((_, _, reason)) = seen
        .book
        .cannot_get
        .iter()
        .find(|(_, lack, _)| lack == thing)
    {
        parts.push(match reason {
            Some(reason) => format!("can't be reached: {reason}"),
            None => "can't be reached".to_owned(),
        });
    }
    if let Thing::Leg { leg } = thing {
        parts.extend(meets(seen, *leg));
    }
    let said = parts.join(", ");
    let slip = seen
        .proof(thing)
        .filter(|_| !seen.hides(thing))
        .and_then(|proof| proof.slip_words(None, seen.round_to()));
    match slip {
        Some(slip) => format!("{said}. {}.", names::capital(&slip)),
        None => said,
    }
}

/// "meets leg 5 at an inside corner".
fn meets(seen: &SolvedJob, leg: u32) -> Option<String> {
    let next = if seen.is_shut() && leg as usize == seen.laid.legs {
        1
    } else {
        leg + 1
    };
    let tapped = seen
        .book
        .corners
        .iter()
        .rev()
        .find(|(_, corner)| corner.after_leg == leg);
    let turn = match tapped {
        Some((_, corner)) => corner.turn,
        // The corner that a closing leg needs no tap for.
        None if seen.is_shut() && next == 1 => {
            let degrees = seen.laid.walk.turns.last()?.in_degrees().abs();
            if (degrees - 90.0).abs() < 0.5 {
                Turn::Outside
            } else {
                Turn::Angled { degrees }
            }
        }
        None => return None,
    };
    let corner = match turn {
        Turn::Straight => return Some(format!("runs straight on into leg {next}")),
        Turn::Outside | Turn::Inside | Turn::Angled { .. } => names::corner(turn),
    };
    Some(format!("meets leg {next} at an {corner}"))
}

/// Every reading of a thing, the newest first.
#[must_use]
pub fn story(seen: &SolvedJob, thing: &Thing, state: State) -> Vec<StoryView> {
    let readings = seen
        .book
        .readings
        .iter()
        .rev()
        .filter(|read| read.thing == *thing);
    readings.map(|read| story_item(seen, read, state)).collect()
}

fn story_item(seen: &SolvedJob, read: &BookedReading, of_thing: State) -> StoryView {
    let state = if read.struck.is_some() {
        State::Struck
    } else if read.how == HowRead::Told {
        State::Hearsay
    } else {
        of_thing
    };
    let mut about = vec![
        names::how(&read.thing, read.how, read.followed),
        names::time_of_day(&read.local_time),
        whose(seen, read.device, &read.author),
    ];
    if read.blind {
        about.push("without sight of an earlier value".to_owned());
    }
    if read.read_back {
        about.push("read back right".to_owned());
    }
    about.extend(read.struck.as_ref().map(struck));
    StoryView {
        entry: read.entry,
        value: if seen.hides(&read.thing) {
            String::new()
        } else {
            in_words(&read.text)
        },
        state,
        state_word: state.word().to_owned(),
        about: about.join(", "),
        may_strike: read.struck.is_none(),
    }
}

/// Which device booked it, and who, where it was another.
#[must_use]
pub fn whose(seen: &SolvedJob, device: Uuid, author: &str) -> String {
    if device == seen.device {
        "this phone".to_owned()
    } else {
        let name = names::device(device);
        // Before a hub or a person gives a name, every device says the same of who books on it.
        match author {
            "" | "me" | "this phone" => name,
            author => format!("{name}, {author}"),
        }
    }
}

/// "struck 2:58 pm: digits turned".
#[must_use]
pub fn struck(struck: &SupersededBy) -> String {
    let how = match struck.how {
        TakenOut::Strike => "struck",
        TakenOut::Undo => "taken back",
        TakenOut::Replaced => "replaced",
    };
    let time = names::time_of_day(&struck.local_time);
    match &struck.reason {
        Some(reason) => format!("{how} {time}: {reason}"),
        None => format!("{how} {time}"),
    }
}

/// Photos of a thing, by their names in the photo folder.
#[must_use]
pub fn photos(seen: &SolvedJob, thing: &Thing) -> Vec<String> {
    let of_it = |of: Option<&Thing>| of.map(Thing::whole) == Some(thing.whole());
    let photos = seen.book.photos.iter().rev().map(|(_, photo)| photo);
    photos
        .filter(|photo| of_it(photo.of.as_ref()))
        .map(|photo| photo.sha256.clone())
        .collect()
}

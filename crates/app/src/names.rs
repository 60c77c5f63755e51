//! What things are called on the screens.

use eavebook_core::book::kinds::{
    DeckSizeOf, EndKind, Followed, HowRead, ItemKind, SaddleObserved, SizeOf, Thing, Turn,
};
pub use eavebook_core::book::names::capital;
use uuid::Uuid;

/// `leg 4`, `tie 2-5`: the name of a thing in lists and in addresses.
#[must_use]
pub fn name(thing: &Thing) -> String {
    thing.name()
}

/// The thing with this name.
#[must_use]
pub fn thing(name: &str) -> Option<Thing> {
    match name {
        "eave height" => return Some(Thing::EaveHeight),
        "ridge height" => return Some(Thing::RidgeHeight),
        "deck" => return Some(Thing::Deck),
        "layers" => return Some(Thing::Layers),
        _ => {}
    }
    let (kind, rest) = name.split_once(' ')?;
    match kind {
        "leg" => Some(Thing::Leg {
            leg: rest.parse().ok()?,
        }),
        "tie" => {
            let (from, to) = rest.split_once('-')?;
            Some(Thing::Tie {
                from: from.parse().ok()?,
                to: to.parse().ok()?,
            })
        }
        "change" => Some(Thing::Change {
            number: rest.parse().ok()?,
        }),
        "overhang" => Some(Thing::Overhang {
            leg: rest.parse().ok()?,
        }),
        "face" => Some(Thing::Slope {
            leg: rest.parse().ok()?,
        }),
        "deck" => {
            let sizes = [
                DeckSizeOf::Gap,
                DeckSizeOf::PlankWidth,
                DeckSizeOf::Thickness,
            ];
            let size = sizes.into_iter().find(|size| size.word() == rest)?;
            Some(Thing::DeckSize { size })
        }
        _ => ItemKind::ALL
            .into_iter()
            .find_map(|item| item_named(item, name)),
    }
}

/// `box vent 2`, `chimney 1 width`.
fn item_named(item: ItemKind, name: &str) -> Option<Thing> {
    let rest = name.strip_prefix(item.word())?.strip_prefix(' ')?;
    let Some((number, size)) = rest.split_once(' ') else {
        let number = rest.parse().ok()?;
        return Some(Thing::Item { item, number });
    };
    let number = number.parse().ok()?;
    let sizes = [SizeOf::Across, SizeOf::Width, SizeOf::Depth, SizeOf::Height];
    let size = sizes.into_iter().find(|known| known.word() == size)?;
    Some(Thing::Size { item, number, size })
}

/// The kind of corner: `outside corner`.
#[must_use]
pub fn corner(turn: Turn) -> &'static str {
    match turn {
        Turn::Outside => "outside corner",
        Turn::Inside => "inside corner",
        Turn::Angled { .. } => "angled corner",
        Turn::Straight => "step straight on",
    }
}

/// What rises at a leg: `a gable`.
#[must_use]
pub fn end(end: EndKind) -> &'static str {
    match end {
        EndKind::Sloped => "a slope",
        EndKind::Gable => "a gable",
        EndKind::Wall => "a wall that rises past the roof",
    }
}

/// How a value was read, and along what: `taped along the eave edge`; `taped`, of what lies along
/// nothing.
#[must_use]
pub fn how(thing: &Thing, how: HowRead, followed: Followed) -> String {
    let how = match how {
        HowRead::Taped => "taped",
        HowRead::Paced => "paced",
        HowRead::OffPhoto => "read off a photo",
        HowRead::Told => "told, not read,",
    };
    if !thing.is_of_outline() {
        return how.trim_end_matches(',').to_owned();
    }
    let along = match followed {
        Followed::EaveEdge => "the eave edge",
        Followed::GutterFace => "the gutter face",
        Followed::Wall => "the wall",
    };
    format!("{how} along {along}")
}

/// What a device is called on the others: `device 3f9a`, by the last signs of its id.
#[must_use]
pub fn device(id: Uuid) -> String {
    let id = id.simple().to_string();
    format!("device {}", &id[id.len() - 4..])
}

/// A count of readings: `read twice`.
#[must_use]
pub fn times(count: usize) -> String {
    match count {
        0 => "not read".to_owned(),
        1 => "read once".to_owned(),
        2 => "read twice".to_owned(),
        many => format!("read {many} times"),
    }
}

/// What was seen of a saddle behind a chimney.
#[must_use]
pub fn saddle(seen: SaddleObserved) -> &'static str {
    match seen {
        SaddleObserved::Yes => "a saddle behind it",
        SaddleObserved::No => "no saddle behind it",
        SaddleObserved::NotSeen => "nobody could see whether a saddle stands behind it",
    }
}

/// The time of day of a local time: `2:41 pm`. What is no time stays as it is.
#[must_use]
pub fn time_of_day(local_time: &str) -> String {
    chrono::DateTime::parse_from_rfc3339(local_time).map_or_else(
        |_| local_time.to_owned(),
        |time| time.format("%-I:%M %P").to_string(),
    )
}

/// The day and the time of day of a local time: `2 May 2026, 2:41 pm`.
#[must_use]
pub fn day_and_time(local_time: &str) -> String {
    chrono::DateTime::parse_from_rfc3339(local_time).map_or_else(
        |_| local_time.to_owned(),
        |time| time.format("%-d %b %Y, %-I:%M %P").to_string(),
    )
}

/// Things in a row: `legs 2, 3 and 6`.
#[must_use]
pub fn listed(names: &[String]) -> String {
    match names {
        [] => String::new(),
        [only] => only.clone(),
        [most @ .., last] => format!("{} and {last}", most.join(", ")),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn names_come_back_as_the_things_they_name() {
        let mut all = vec![
            Thing::Leg { leg: 12 },
            Thing::Tie { from: 2, to: 5 },
            Thing::Overhang { leg: 3 },
            Thing::Slope { leg: 2 },
            Thing::EaveHeight,
            Thing::RidgeHeight,
            Thing::Deck,
            Thing::Layers,
            Thing::Change { number: 2 },
        ];
        for size in [
            DeckSizeOf::Gap,
            DeckSizeOf::PlankWidth,
            DeckSizeOf::Thickness,
        ] {
            all.push(Thing::DeckSize { size });
        }
        for item in ItemKind::ALL {
            all.push(Thing::Item { item, number: 2 });
            for size in item.sizes() {
                all.push(Thing::Size {
                    item,
                    number: 2,
                    size: *size,
                });
            }
        }
        for named in all {
            assert_eq!(thing(&name(&named)), Some(named));
        }
        for no_name in [
            "leg",
            "leg x",
            "tie 2",
            "wall 3",
            "",
            "leg -1",
            "pipe",
            "pipe x",
            "deck x",
            "box 1",
            "pipe 1 depth of it",
        ] {
            assert_eq!(thing(no_name), None, "{no_name}");
        }
    }

    #[test]
    fn the_time_of_day_is_that_of_the_place() {
        assert_eq!(time_of_day("2026-05-02T14:41:07-05:00"), "2:41 pm");
        assert_eq!(time_of_day("2026-05-02T00:05:07+02:00"), "12:05 am");
        let afternoon = day_and_time("2026-05-02T14:41:07-05:00");
        assert_eq!(afternoon, "2 May 2026, 2:41 pm");
    }
}

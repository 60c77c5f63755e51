//! What a field book says of the roof beside its outline and slopes: what stands out of it, what
//! lies on it, what it is nailed to, how high its eaves lie. Unknown stays unknown.

use super::counted::measured;
use super::fold::{FieldBook, Noted};
use super::kinds::{
    CoveringObserved, DeckKind, DeckSizeOf, ItemKind, ObservedOverLeg, PenetrationAdded,
    RoofObserved, RoofQuestion, SizeOf, Thing,
};
use crate::survey::{Covering, Deck, Penetration, PenetrationKind, Place};

/// What stands out of the roof, in the order in which it was booked: each thing once, as it was last
/// said.
#[must_use]
pub fn items(book: &FieldBook) -> Vec<&PenetrationAdded> {
    let mut items: Vec<&PenetrationAdded> = Vec::new();
    for noted in book.penetrations.iter().filter(|p| p.struck.is_none()) {
        match items
            .iter_mut()
            .find(|there| there.thing() == noted.what.thing())
        {
            Some(there) => *there = &noted.what,
            None => items.push(&noted.what),
        }
    }
    items
}

/// What stands out of the roof as the kernels take it, each with its thing; the roof has one body.
/// What needs a size for its flashing and has none is left out: [`unsized_items`].
#[must_use]
pub fn penetrations(book: &FieldBook) -> Vec<(Thing, Penetration)> {
    let sized = items(book).into_iter().filter_map(|seen| {
        let at = Place::FaceOf {
            body: 0,
            leg: (seen.leg as usize).checked_sub(1)?,
        };
        let kind = kind_of(book, seen)?;
        Some((seen.thing(), Penetration { kind, at }))
    });
    sized.collect()
}

/// What stands out of the roof and lacks a size that its flashing needs.
#[must_use]
pub fn unsized_items(book: &FieldBook) -> Vec<Thing> {
    let lacking = items(book)
        .into_iter()
        .filter(|seen| kind_of(book, seen).is_none());
    lacking.map(PenetrationAdded::thing).collect()
}

fn kind_of(book: &FieldBook, seen: &PenetrationAdded) -> Option<PenetrationKind> {
    let PenetrationAdded { item, number, .. } = *seen;
    let read = |size| measured(book, &Thing::Size { item, number, size });
    Some(match item {
        ItemKind::Pipe => PenetrationKind::Pipe {
            size: read(SizeOf::Across)?,
        },
        ItemKind::Mast => PenetrationKind::Mast {
            size: read(SizeOf::Across)?,
        },
        ItemKind::Flue => PenetrationKind::Flue {
            size: read(SizeOf::Across)?,
        },
        ItemKind::Chimney => PenetrationKind::Chimney {
            width: read(SizeOf::Width)?,
            depth: read(SizeOf::Depth)?,
        },
        ItemKind::Skylight => PenetrationKind::Skylight {
            width: read(SizeOf::Width)?,
            depth: read(SizeOf::Depth)?,
        },
        ItemKind::BoxVent => PenetrationKind::BoxVent,
        ItemKind::Fan => PenetrationKind::Fan,
        ItemKind::Dish => PenetrationKind::Dish,
        ItemKind::Solar => PenetrationKind::Solar,
        ItemKind::Other => PenetrationKind::Other,
    })
}

/// What was seen of the covering and stands, in display order.
pub fn coverings(book: &FieldBook) -> impl Iterator<Item = &CoveringObserved> {
    let noted = book.coverings.iter().filter(|seen| seen.struck.is_none());
    noted.map(|seen| &seen.what)
}

/// What lies on the roof: the most layers that anybody saw at one edge, since one edge does not
/// prove the whole, and the kind last named.
#[must_use]
pub fn covering(book: &FieldBook) -> Option<Covering> {
    coverings(book).next()?;
    Some(Covering {
        kind: coverings(book).filter_map(|seen| seen.kind.clone()).last(),
        layers: coverings(book).filter_map(|seen| seen.layers).max(),
    })
}

/// What the covering is nailed to: planks where anybody saw planks.
#[must_use]
pub fn deck(book: &FieldBook) -> Option<Deck> {
    let noted = book.decks.iter().filter(|seen| seen.struck.is_none());
    let kinds: Vec<DeckKind> = noted.map(|seen| seen.what.kind).collect();
    let kind = kinds
        .iter()
        .find(|kind| **kind == DeckKind::Plank)
        .or(kinds.last());
    let size = |size| measured(book, &Thing::DeckSize { size });
    let (gap, plank_width) = (size(DeckSizeOf::Gap), size(DeckSizeOf::PlankWidth));
    if kind.is_none() && gap.is_none() && plank_width.is_none() {
        return None;
    }
    Some(Deck {
        kind: kind.map(|kind| kind.word().to_owned()),
        plank_width,
        gap,
    })
}

/// What was seen of the roof over its legs and stands, in display order.
pub fn roof_seen(book: &FieldBook) -> impl Iterator<Item = &Noted<RoofObserved>> {
    book.roof_seen.iter().filter(|seen| seen.struck.is_none())
}

/// Returns the observation in force that answers a question about the roof over a leg, from 1; `None`
/// if nobody answered it.
#[must_use]
pub fn observed_over_leg(
    book: &FieldBook,
    leg: u32,
    question: RoofQuestion,
) -> Option<ObservedOverLeg> {
    let over_leg = roof_seen(book).filter(|noted| noted.what.leg == leg);
    over_leg
        .map(|noted| noted.what.over)
        .filter(|over| RoofQuestion::from(*over) == question)
        .last()
}

/// Rates of the firm changed for this job and in force, the last said of each key last: (key path,
/// value as typed; empty where it is blank).
pub fn rates(book: &FieldBook) -> impl Iterator<Item = (&str, &str)> {
    let noted = book.rates.iter().filter(|set| set.struck.is_none());
    noted.map(|set| (set.what.key.as_str(), set.what.value.as_str()))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::book::fold::BookedReading;
    use crate::book::kinds::{DeckObserved, Followed, HowRead, ItemKind, SizeOf, TapeMarks};
    use crate::units::Length;
    use uuid::Uuid;

    fn read(thing: Thing, text: &str) -> BookedReading {
        BookedReading {
            entry: Uuid::nil(),
            thing,
            text: text.to_owned(),
            tape: TapeMarks::FeetInches,
            how: HowRead::Taped,
            followed: Followed::EaveEdge,
            blind: false,
            read_back: false,
            local_time: "2026-05-02T14:41:07-05:00".to_owned(),
            author: "me".to_owned(),
            device: Uuid::nil(),
            struck: None,
        }
    }

    fn noted<T>(what: T) -> Noted<T> {
        Noted {
            entry: Uuid::nil(),
            what,
            local_time: "2026-05-02T14:41:07-05:00".to_owned(),
            author: "me".to_owned(),
            device: Uuid::nil(),
            struck: None,
        }
    }

    fn seen(layers: Option<u32>, leg: u32) -> CoveringObserved {
        CoveringObserved {
            layers,
            kind: None,
            leg: Some(leg),
        }
    }

    #[test]
    fn nobody_looked_is_not_one_layer() {
        let mut book = FieldBook::default();
        assert_eq!((covering(&book), deck(&book)), (None, None));
        book.coverings = vec![noted(seen(None, 1))];
        assert_eq!(covering(&book).and_then(|covering| covering.layers), None);
    }

    #[test]
    fn the_most_layers_seen_at_any_edge_are_the_layers() {
        let book = FieldBook {
            coverings: vec![noted(seen(Some(2), 1)), noted(seen(Some(1), 4))],
            ..FieldBook::default()
        };
        assert_eq!(
            covering(&book).and_then(|covering| covering.layers),
            Some(2)
        );
    }

    #[test]
    fn planks_seen_at_one_edge_are_planks_whatever_another_showed() {
        let at = |kind, leg| {
            noted(DeckObserved {
                kind,
                leg: Some(leg),
            })
        };
        let book = FieldBook {
            decks: vec![at(DeckKind::Plank, 2), at(DeckKind::Sheet, 5)],
            readings: vec![read(
                Thing::DeckSize {
                    size: DeckSizeOf::Gap,
                },
                "0 ft 0 1/4 in",
            )],
            ..FieldBook::default()
        };
        let deck = deck(&book).unwrap();
        assert_eq!(deck.kind.as_deref(), Some("plank"));
        assert_eq!(deck.gap, Some(Length::inches(0.25)));
    }

    #[test]
    fn a_pipe_without_a_size_is_named_and_left_out_until_it_has_one() {
        let pipe = PenetrationAdded {
            item: ItemKind::Pipe,
            number: 1,
            leg: 3,
            saddle: None,
        };
        let mut book = FieldBook {
            penetrations: vec![noted(pipe.clone())],
            ..FieldBook::default()
        };
        assert_eq!(penetrations(&book), []);
        assert_eq!(unsized_items(&book), [pipe.thing()]);
        let size = Thing::Size {
            item: ItemKind::Pipe,
            number: 1,
            size: SizeOf::Across,
        };
        book.readings = vec![read(size, "1 1/2 in")];
        let sized = Penetration {
            kind: PenetrationKind::Pipe {
                size: Length::inches(1.5),
            },
            at: Place::FaceOf { body: 0, leg: 2 },
        };
        assert_eq!(penetrations(&book), [(pipe.thing(), sized)]);
        assert_eq!(unsized_items(&book), []);
    }

    #[test]
    fn of_three_sizes_read_the_middle_one_is_taken() {
        let size = Thing::Size {
            item: ItemKind::Pipe,
            number: 1,
            size: SizeOf::Across,
        };
        let mut book = FieldBook::default();
        assert_eq!(measured(&book, &size), None);
        book.readings = ["3 in", "8 in", "4 in"]
            .map(|text| read(size.clone(), text))
            .into();
        assert_eq!(measured(&book, &size), Some(Length::inches(4.0)));
    }
}

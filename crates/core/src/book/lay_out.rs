//! A field book laid out as the survey that the kernels take: legs in the order of the walk, turns
//! at the corners, readings in force.

use super::counted::{counts, measured};
use super::fold::{BookedReading, FieldBook};
use super::house_side::HouseSide;
use super::kinds::{EndKind, Followed, HowRead, ObservedOverLeg, PitchRead, Side, Thing, Turn};
use super::on_roof;
use crate::outline::{LegLength, Round, Tolerance, Walk, WalkedLeg, default_sigma, walk};
use crate::survey::{
    Body, LegEdge, ObservedEnd, PitchReading, Reading, Rise, RoofObservation, Sketch, Span, Survey,
    Way,
};
use crate::units::{Angle, Length, Pitch, Tape};

/// A field book laid out.
#[derive(Clone, Debug, PartialEq)]
pub struct LaidOut {
    /// Legs walked or under way, from 1 to this; the legs of the outline once it has come round.
    pub legs: usize,
    /// Length that the readings in force give each leg, feet: the middle one of them.
    pub lengths: Vec<Option<f64>>,
    /// Direction of each leg in degrees, leg 1 along 0, left positive; none past a corner that
    /// nobody tapped.
    pub directions: Vec<Option<f64>>,
    /// The walk, drawn from its start, with its closure.
    pub walk: Walk,
    /// What the kernels take, once the walk has come round.
    pub survey: Option<Survey>,
}

/// What a field book says, laid out. `none_tapped`: the side on which the building stands while no
/// corner has been tapped.
#[must_use]
pub fn lay_out(book: &FieldBook, none_tapped: Side) -> LaidOut {
    let side = book
        .corners
        .first()
        .map_or(none_tapped, |(_, corner)| corner.building_on);
    let turn = |leg: usize| turn_after(book, leg, side);
    let reached = last_leg(book);
    let legs: Vec<WalkedLeg> = (1..=reached)
        .map(|leg| WalkedLeg {
            length: length(book, leg),
            turn: turn(leg),
        })
        .collect();
    let walk = walk(&legs, side, &Tolerance::default());
    let survey = walk
        .sketch()
        .map(|sketch| survey(book, sketch, walk.turns.len()));
    let legs = match walk.round {
        Round::LastCornerUntapped | Round::EveryCornerTapped => walk.turns.len(),
        // A corner tapped after the last leg begins another.
        Round::NotYet if reached > 0 && turn(reached).is_some() => reached + 1,
        Round::NotYet => reached,
    };
    LaidOut {
        legs,
        lengths: (1..=legs)
            .map(|leg| match length(book, leg) {
                LegLength::Read(length) => Some(length.in_feet()),
                LegLength::CannotGet | LegLength::NotYet => None,
            })
            .collect(),
        directions: (0..legs).map(|leg| direction(&walk.turns, leg)).collect(),
        walk,
        survey,
    }
}

impl LaidOut {
    /// Returns the side of the house along which a leg runs, from 1; `None` past an untapped corner.
    #[must_use]
    pub fn side_of_leg(&self, leg: u32) -> Option<HouseSide> {
        let index = (leg as usize).checked_sub(1)?;
        let direction = self.directions.get(index).copied().flatten()?;
        Some(HouseSide::from_direction(direction))
    }

    /// Whether the walk has come round to its start.
    #[must_use]
    pub fn is_round(&self) -> bool {
        self.walk.round != Round::NotYet
    }
}

/// The last leg of which anything was said, from 1.
fn last_leg(book: &FieldBook) -> usize {
    let read = book
        .readings
        .iter()
        .filter(|read| counts(read))
        .filter_map(|r| leg_of(&r.thing));
    let lacked = book
        .cannot_get
        .iter()
        .filter_map(|(_, thing, _)| leg_of(thing));
    let tapped = book
        .corners
        .iter()
        .map(|(_, corner)| corner.after_leg as usize);
    read.chain(lacked).chain(tapped).max().unwrap_or(0)
}

/// How the walk turns at the far corner of a leg, where somebody tapped it. A walker who changed
/// sides midway turns the other way for the same corner.
fn turn_after(book: &FieldBook, leg: usize, side: Side) -> Option<Turn> {
    let mut there = book.corners.iter().map(|(_, corner)| corner).rev();
    let corner = there.find(|corner| corner.after_leg as usize == leg)?;
    Some(match corner.turn {
        turn if corner.building_on == side => turn,
        Turn::Outside => Turn::Inside,
        Turn::Inside => Turn::Outside,
        Turn::Angled { degrees } => Turn::Angled { degrees: -degrees },
        Turn::Straight => Turn::Straight,
    })
}

/// Degrees from leg 1 to a leg, counted from 0, as far as turns are known.
fn direction(turns: &[Angle], leg: usize) -> Option<f64> {
    Some(turns.get(..leg)?.iter().map(|turn| turn.in_degrees()).sum())
}

/// What is known of the length of a leg.
fn length(book: &FieldBook, leg: usize) -> LegLength {
    let thing = u32::try_from(leg).map(|leg| Thing::Leg { leg });
    let read = thing.ok().and_then(|thing| measured(book, &thing));
    let lacks = |(_, thing, _): &(_, Thing, _)| leg_of(thing) == Some(leg);
    if let Some(length) = read {
        LegLength::Read(length)
    } else if book.cannot_get.iter().any(lacks) {
        LegLength::CannotGet
    } else {
        LegLength::NotYet
    }
}

fn leg_of(thing: &Thing) -> Option<usize> {
    match thing {
        Thing::Leg { leg } => Some(*leg as usize),
        Thing::Tie { .. }
        | Thing::Item { .. }
        | Thing::Size { .. }
        | Thing::Overhang { .. }
        | Thing::Slope { .. }
        | Thing::EaveHeight
        | Thing::RidgeHeight
        | Thing::Deck
        | Thing::DeckSize { .. }
        | Thing::Layers
        | Thing::Change { .. } => None,
    }
}

/// The survey of an outline of this shape.
fn survey(book: &FieldBook, outline: Sketch, legs: usize) -> Survey {
    let readings = book.readings.iter().filter(|read| counts(read));
    let body = Body {
        id: "main".to_owned(),
        // Heights count from the eave where nobody has read how high it is.
        eave_height: measured(book, &Thing::EaveHeight).unwrap_or(Length::ZERO),
        outline,
        readings: readings.filter_map(|read| reading(read, legs)).collect(),
        edges: (1..=legs).map(|leg| edge(book, leg, legs)).collect(),
        placed_from: None,
    };
    Survey {
        bodies: vec![body],
        penetrations: on_roof::penetrations(book)
            .into_iter()
            .map(|(_, penetration)| penetration)
            .collect(),
        deck: on_roof::deck(book),
        covering: on_roof::covering(book),
        seen: seen(book),
        ..Survey::default()
    }
}

/// What was seen of the roof and stands: over legs in the order in which it was booked, then the
/// ridge. There is one body.
fn seen(book: &FieldBook) -> Vec<RoofObservation> {
    let over_legs = on_roof::roof_seen(book).filter_map(|noted| {
        let leg = (noted.what.leg as usize).checked_sub(1)?;
        let body = 0;
        Some(match noted.what.over {
            ObservedOverLeg::Gable => RoofObservation::End {
                body,
                leg,
                end: ObservedEnd::Gable,
            },
            ObservedOverLeg::Slope => RoofObservation::End {
                body,
                leg,
                end: ObservedEnd::Slope,
            },
            ObservedOverLeg::Faces { count } => RoofObservation::Faces {
                body,
                leg,
                count: count as usize,
            },
        })
    });
    let ridge = measured(book, &Thing::RidgeHeight).map(|over_eaves| {
        let counted = book
            .in_force_of(&Thing::RidgeHeight)
            .find(|read| counts(read));
        let sigma = counted.and_then(|read| sigma(read, over_eaves));
        let sigma = sigma.unwrap_or(default_sigma(over_eaves));
        RoofObservation::Ridge {
            body: 0,
            over_eaves,
            sigma,
        }
    });
    over_legs.chain(ridge).collect()
}

/// A booked reading as the kernels take it; its id is that of its entry. None where it spans
/// nothing of this outline.
fn reading(read: &BookedReading, legs: usize) -> Option<Reading> {
    let corner = |corner: u32| {
        (corner as usize)
            .checked_sub(1)
            .filter(|corner| *corner < legs)
    };
    let span = match read.thing {
        Thing::Leg { leg } => Span::Leg(corner(leg)?),
        Thing::Tie { from, to } if from == to => return None,
        Thing::Tie { from, to } => Span::Tie(corner(from)?, corner(to)?),
        Thing::Item { .. }
        | Thing::Size { .. }
        | Thing::Overhang { .. }
        | Thing::Slope { .. }
        | Thing::EaveHeight
        | Thing::RidgeHeight
        | Thing::Deck
        | Thing::DeckSize { .. }
        | Thing::Layers
        | Thing::Change { .. } => return None,
    };
    let value = Tape::read(&read.text).ok()?.length();
    Some(Reading {
        id: read.entry.to_string(),
        span,
        value,
        text: Some(read.text.clone()),
        sigma: sigma(read, value),
    })
}

/// One standard deviation where it is not that of a tape along an eave. From memory and our own
/// judgement, to be replaced by a crew's own repeats: a slack or slanted line, half a pace and 3 %
/// of what was paced, a length scaled off a photo.
fn sigma(read: &BookedReading, value: Length) -> Option<Length> {
    let length = value.in_feet();
    let feet = match (read.how, read.followed) {
        (HowRead::Paced, _) => 1.25_f64.hypot(0.03 * length),
        (HowRead::OffPhoto, _) => 0.25_f64.hypot(0.005 * length),
        (HowRead::Taped | HowRead::Told, Followed::GutterFace) => 0.25_f64.hypot(0.001 * length),
        (HowRead::Taped | HowRead::Told, Followed::EaveEdge | Followed::Wall) => return None,
    };
    Some(Length::feet(feet))
}

/// What rises at a leg, as far as somebody said.
fn edge(book: &FieldBook, leg: usize, legs: usize) -> LegEdge {
    let end = book
        .leg_ends
        .iter()
        .rev()
        .find(|(_, at, _)| *at as usize == leg);
    let rise = match end.map(|(_, _, end)| *end) {
        Some(EndKind::Gable) => Rise::Gable,
        Some(EndKind::Wall) => Rise::Wall,
        Some(EndKind::Sloped) | None => slope(book, leg, legs),
    };
    LegEdge {
        rise,
        overhang: u32::try_from(leg)
            .ok()
            .and_then(|leg| measured(book, &Thing::Overhang { leg })),
    }
}

/// The slope of a leg: what was read there, numbers given beside it; else the last number given,
/// else the leg that it was taken over from.
fn slope(book: &FieldBook, leg: usize, legs: usize) -> Rise {
    let (mut read, mut numbers) = (Vec::new(), Vec::new());
    let mut told = Rise::Unknown;
    let here = book
        .pitches
        .iter()
        .filter(|pitch| pitch.leg as usize == leg);
    for pitch in here.filter(|pitch| pitch.struck.is_none()) {
        match pitch.read {
            PitchRead::Phone { degrees, reversed } => read.push(PitchReading::new(
                Angle::degrees(degrees),
                if reversed {
                    Way::Reversed
                } else {
                    Way::Forward
                },
            )),
            PitchRead::LevelAndTape { run_in, rise_in } => read.push(PitchReading::new(
                Pitch::rise_in_12(12.0 * rise_in / run_in).angle(),
                Way::LevelAndTape,
            )),
            PitchRead::Number { in_12 } => {
                let pitch = Pitch::rise_in_12(in_12);
                numbers.push(PitchReading::new(pitch.angle(), Way::Number));
                told = Rise::Pitch(pitch);
            }
            PitchRead::Sighted { degrees, sigma, .. } => read.push(PitchReading {
                sigma: Some(Angle::degrees(sigma)),
                ..PitchReading::new(Angle::degrees(degrees), Way::Sighted)
            }),
            PitchRead::SameAs { leg } if told == Rise::Unknown => {
                if let Some(leg) = (leg as usize).checked_sub(1).filter(|leg| *leg < legs) {
                    told = Rise::SameAs(leg);
                }
            }
            PitchRead::SameAs { .. } | PitchRead::NotGot => {}
        }
    }
    if read.is_empty() {
        told
    } else {
        read.append(&mut numbers);
        Rise::PitchReadings(read)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::book::kinds::{Corner, TapeMarks};
    use uuid::Uuid;

    const O: Turn = Turn::Outside;
    const I: Turn = Turn::Inside;

    /// A walk with the building on the right: lengths in feet of the legs read, corners tapped.
    fn walk(lengths: &[f64], corners: &[Turn]) -> FieldBook {
        let readings = lengths.iter().zip(1..).map(|(length, leg)| BookedReading {
            entry: Uuid::from_u128(u128::from(leg)),
            thing: Thing::Leg { leg },
            text: format!("{length} ft"),
            tape: TapeMarks::FeetTenths,
            how: HowRead::Taped,
            followed: Followed::EaveEdge,
            blind: false,
            read_back: false,
            local_time: "2026-05-02T14:41:07-05:00".to_owned(),
            author: "me".to_owned(),
            device: Uuid::nil(),
            struck: None,
        });
        let corner = |(turn, after_leg): (&Turn, u32)| Corner {
            after_leg,
            turn: *turn,
            building_on: Side::Right,
        };
        FieldBook {
            readings: readings.collect(),
            corners: corners
                .iter()
                .zip(1..)
                .map(|at| (Uuid::nil(), corner(at)))
                .collect(),
            ..FieldBook::default()
        }
    }

    fn round(lengths: &[f64], corners: &[Turn]) -> (Round, usize) {
        let laid = lay_out(&walk(lengths, corners), Side::Right);
        (laid.walk.round, laid.legs)
    }

    const T: [f64; 8] = [40.0, 20.0, 14.0, 16.0, 12.0, 16.0, 14.0, 20.0];
    const T_CORNERS: [Turn; 7] = [O, O, I, O, O, I, O];

    #[test]
    fn a_closing_leg_needs_no_corner() {
        let shut = Round::LastCornerUntapped;
        assert_eq!(round(&[60.0, 30.0, 60.0, 30.0], &[O, O, O]), (shut, 4));
        assert_eq!(round(&T, &T_CORNERS), (shut, 8));
    }

    #[test]
    fn a_walk_is_open_at_every_leg_before_the_last() {
        assert_eq!(round(&[], &[]), (Round::NotYet, 0));
        for legs in 1..8 {
            assert_eq!(
                round(&T[..legs], &T_CORNERS[..legs - 1]),
                (Round::NotYet, legs),
                "{legs}"
            );
        }
    }

    #[test]
    fn one_slip_in_any_leg_leaves_a_walk_that_has_come_round() {
        for wrong in 0..8 {
            let mut lengths = T;
            lengths[wrong] += 18.0;
            let (came, legs) = round(&lengths, &T_CORNERS);
            assert_eq!((came, legs), (Round::LastCornerUntapped, 8), "leg {wrong}");
        }
    }

    #[test]
    fn a_corner_after_the_last_leg_begins_another() {
        assert_eq!(round(&[60.0, 30.0], &[O, O]), (Round::NotYet, 3));
    }

    #[test]
    fn a_leg_that_nobody_can_reach_is_left_to_the_others() {
        let mut book = walk(&[60.0, 30.0, 60.0], &[O, O, O]);
        assert!(!lay_out(&book, Side::Right).is_round());
        book.cannot_get
            .push((Uuid::nil(), Thing::Leg { leg: 4 }, None));
        let laid = lay_out(&book, Side::Right);
        assert!(laid.is_round() && laid.legs == 4);
        assert_eq!(laid.lengths[3], None);
    }

    #[test]
    fn with_the_building_on_the_right_an_outside_corner_turns_right() {
        let laid = lay_out(&walk(&[60.0, 30.0], &[O, I]), Side::Right);
        assert_eq!(laid.directions, [Some(0.0), Some(-90.0), Some(0.0)]);
    }

    #[test]
    fn a_corner_that_nobody_tapped_leaves_the_way_open() {
        let mut book = walk(&[60.0, 30.0, 20.0], &[O, O]);
        book.corners.remove(0);
        let laid = lay_out(&book, Side::Right);
        assert_eq!(laid.directions, [Some(0.0), None, None]);
        assert!(!laid.is_round() && laid.legs == 3);
    }

    #[test]
    fn a_wall_and_a_told_length_are_kept_and_not_counted() {
        let mut book = walk(&[60.0, 30.0, 60.0, 30.0], &[O, O, O]);
        book.readings[0].followed = Followed::Wall;
        book.readings[1].how = HowRead::Told;
        let laid = lay_out(&book, Side::Right);
        assert_eq!(laid.lengths, [None, None, Some(60.0), Some(30.0)]);
    }
}

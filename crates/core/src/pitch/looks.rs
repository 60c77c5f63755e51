//! Readings of a slope to looks at it: what each says of the slope, and of the phone.
//!
//! A phone reads the slope plus its zero error; turned end for end it reads the slope less that
//! error, so the mean of the two is free of it and half their difference shows it.

use crate::survey::{PitchReading, SlopePlace, Way};

/// Spread of one phone reading about slope and zero error, degrees (judged; a phone held still
/// against a robot arm stays within 0.3: Mourcou et al., Sensors 15(9):23168, 2015).
pub(super) const READING_SIGMA: f64 = 0.35;
/// Spread of one place about the slope of the face, degrees (judged).
const PLACE_SIGMA: f64 = 0.15;
/// Spread of a level and tape over a foot of run read to an eighth of an inch, degrees (judged).
const LEVEL_AND_TAPE_SIGMA: f64 = 0.5;
/// Spread of a pitch sighted from the ground that states none, degrees: a quarter inch in 12 is
/// about a degree (judged).
const SIGHTED_SIGMA: f64 = 1.0;
/// Spread of the slope as built about a number that names what it was framed to (judged).
const NUMBER_SIGMA: f64 = 0.35;

/// How a slope was looked at.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Kind {
    /// A phone, forward and reversed.
    BothWays,
    /// A phone one way only.
    OneWay,
    /// A level and a tape.
    LevelAndTape,
    /// Marks on a photo.
    Sighted,
    /// A number from elsewhere.
    Number,
}

/// One look at a slope.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct SlopeSample {
    pub kind: Kind,
    /// What it reads of the slope, degrees.
    pub read: f64,
    /// How the zero error of the phone enters: +1 forward, -1 reversed, 0 where it does not.
    pub zero_sign: f64,
    /// Its own spread, degrees, that of its place left out.
    pub sigma: f64,
    /// The zero error that it shows, degrees: forward and reversed alone show one.
    pub zero_error: Option<f64>,
    pub place: Option<SlopePlace>,
}

impl SlopeSample {
    /// It stands for one place on the roof: somebody was up there.
    pub fn is_position(&self) -> bool {
        match self.kind {
            Kind::BothWays | Kind::OneWay | Kind::LevelAndTape => true,
            Kind::Sighted | Kind::Number => false,
        }
    }

    pub fn is_near_eave(&self) -> bool {
        self.place == Some(SlopePlace::NearEave)
    }

    /// Spread about the slope of the face, degrees.
    pub fn about_face(&self) -> f64 {
        if self.is_position() {
            self.sigma.hypot(PLACE_SIGMA)
        } else {
            self.sigma
        }
    }
}

/// The looks in a row of readings: a forward one and the next reversed one are one position,
/// unless they are said to be of two places.
pub(super) fn looks(readings: &[PitchReading]) -> Vec<SlopeSample> {
    let mut looks = Vec::new();
    let mut rest = readings;
    while let [first, after @ ..] = rest {
        rest = after;
        let pair = after
            .first()
            .filter(|second| first.way == Way::Forward && turned_there(first, second));
        looks.push(match pair {
            Some(second) => {
                rest = &after[1..];
                both_ways(first, second)
            }
            None => alone(first),
        });
    }
    looks
}

fn turned_there(forward: &PitchReading, next: &PitchReading) -> bool {
    let one_place = match (forward.place, next.place) {
        (Some(here), Some(there)) => here == there,
        (None, _) | (_, None) => true,
    };
    next.way == Way::Reversed && one_place
}

fn both_ways(forward: &PitchReading, reversed: &PitchReading) -> SlopeSample {
    let read = [forward, reversed].map(|reading| reading.angle.in_degrees());
    let sigma = [forward, reversed].map(|reading| own_sigma(reading, READING_SIGMA));
    SlopeSample {
        kind: Kind::BothWays,
        read: (read[0] + read[1]) / 2.0,
        zero_sign: 0.0,
        sigma: sigma[0].hypot(sigma[1]) / 2.0,
        zero_error: Some((read[0] - read[1]) / 2.0),
        place: forward.place.or(reversed.place),
    }
}

fn alone(reading: &PitchReading) -> SlopeSample {
    let (kind, zero_sign, usual) = match reading.way {
        Way::Forward => (Kind::OneWay, 1.0, READING_SIGMA),
        Way::Reversed => (Kind::OneWay, -1.0, READING_SIGMA),
        Way::LevelAndTape => (Kind::LevelAndTape, 0.0, LEVEL_AND_TAPE_SIGMA),
        Way::Sighted => (Kind::Sighted, 0.0, SIGHTED_SIGMA),
        Way::Number => (Kind::Number, 0.0, NUMBER_SIGMA),
    };
    SlopeSample {
        kind,
        read: reading.angle.in_degrees(),
        zero_sign,
        sigma: own_sigma(reading, usual),
        zero_error: None,
        place: reading.place,
    }
}

/// A stated spread is kept, but for one that would make a curve narrower than its grid.
fn own_sigma(reading: &PitchReading, usual: f64) -> f64 {
    const LEAST: f64 = 0.1;
    reading
        .sigma
        .map_or(usual, |sigma| sigma.in_degrees().max(LEAST))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::units::Angle;

    fn read(degrees: f64, way: Way) -> PitchReading {
        PitchReading::new(Angle::degrees(degrees), way)
    }

    #[test]
    fn a_reversed_reading_with_no_forward_one_before_it_is_a_look_of_its_own() {
        let looks = looks(&[
            read(20.0, Way::Reversed),
            read(21.0, Way::Forward),
            read(22.0, Way::Forward),
            read(23.0, Way::Reversed),
        ]);
        let kinds = looks.iter().map(|look| (look.kind, look.zero_sign as i32));
        assert_eq!(
            kinds.collect::<Vec<_>>(),
            [(Kind::OneWay, -1), (Kind::OneWay, 1), (Kind::BothWays, 0)]
        );
    }

    #[test]
    fn a_flip_said_to_be_of_two_places_is_two_looks() {
        let forward = read(20.0, Way::Forward).at(SlopePlace::NearEave);
        let reversed = read(20.4, Way::Reversed);
        assert_eq!(looks(&[forward, reversed]).len(), 1);
        assert_eq!(
            looks(&[forward, reversed.at(SlopePlace::NearRidge)]).len(),
            2
        );
    }
}

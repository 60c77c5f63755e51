//! What rises at each leg of one body, its slopes settled.

use super::chances::{PitchChances, weigh};
use crate::survey::{Band, LegEdge, Rise};
use crate::units::{Angle, Pitch};

/// What rises at a leg once its readings are weighed.
#[derive(Clone, Debug, PartialEq)]
pub enum SettledRise {
    /// Nobody said.
    Unknown,
    /// One slope.
    Slope(SettledPitch),
    /// Several slopes from the eave up, each a number.
    Bands(Vec<Band>),
    /// A vertical end.
    Gable,
    /// A wall that rises past the roof.
    Wall,
}

/// The slope of a face.
#[derive(Clone, Debug, PartialEq)]
pub struct SettledPitch {
    /// What the roof is raised with: the number given, or the likeliest trade pitch.
    pub used: Pitch,
    /// Standard deviation of the slope about it; none of it where a number was given.
    pub sigma: Angle,
    /// The leg whose readings or number made it: legs that took a slope over share one unknown.
    pub read_at: usize,
    /// What the readings say; none where a number was given.
    pub read: Option<PitchChances>,
}

impl SettledPitch {
    /// Returns one standard deviation of the slope as a rise in 12 of run.
    #[must_use]
    pub fn sigma_in_12(&self) -> Pitch {
        let slope = self.used.in_12() / 12.0;
        Pitch::rise_in_12(12.0 * (1.0 + slope * slope) * self.sigma.in_radians())
    }
}

/// Settles the slope of each leg of a body of `legs` legs.
///
/// `edges` holds one entry a leg, or none at all. A leg that takes its slope over from one that
/// takes it over in turn follows the chain; a chain in a circle says nothing.
#[must_use]
pub fn settle(edges: &[LegEdge], legs: usize) -> Vec<SettledRise> {
    (0..legs).map(|leg| settle_leg(edges, leg)).collect()
}

fn settle_leg(edges: &[LegEdge], leg: usize) -> SettledRise {
    let mut read_at = leg;
    for _ in 0..=edges.len() {
        match edges.get(read_at).map(|edge| &edge.rise) {
            None | Some(Rise::Unknown) => return SettledRise::Unknown,
            Some(Rise::SameAs(other)) => read_at = *other,
            Some(Rise::Gable) if read_at == leg => return SettledRise::Gable,
            Some(Rise::Wall) if read_at == leg => return SettledRise::Wall,
            Some(Rise::Bands(bands)) if read_at == leg => {
                return SettledRise::Bands(bands.clone());
            }
            Some(Rise::Gable | Rise::Wall | Rise::Bands(_)) => return SettledRise::Unknown,
            Some(Rise::Pitch(pitch)) => {
                return SettledRise::Slope(SettledPitch {
                    used: *pitch,
                    sigma: Angle::degrees(0.0),
                    read_at,
                    read: None,
                });
            }
            Some(Rise::PitchReadings(readings)) => {
                return weigh(readings).map_or(SettledRise::Unknown, |read| {
                    SettledRise::Slope(SettledPitch {
                        used: read.likeliest(),
                        sigma: read.sigma,
                        read_at,
                        read: Some(read),
                    })
                });
            }
        }
    }
    SettledRise::Unknown
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::survey::{PitchReading, Way};

    fn edge(rise: Rise) -> LegEdge {
        LegEdge {
            rise,
            overhang: None,
        }
    }

    #[test]
    fn a_number_is_exact() {
        let settled = settle(&[edge(Rise::Pitch(Pitch::rise_in_12(7.25)))], 1);
        let SettledRise::Slope(pitch) = &settled[0] else {
            panic!("{settled:?}")
        };
        assert!((pitch.used.in_12() - 7.25).abs() < 1e-12);
        assert!(pitch.sigma_in_12().in_12().abs() < 1e-12);
        assert_eq!(pitch.read, None);
    }

    #[test]
    fn a_slope_taken_over_is_the_same_unknown() {
        let read = Rise::PitchReadings(vec![PitchReading::new(Angle::degrees(26.5), Way::Forward)]);
        let settled = settle(
            &[edge(Rise::SameAs(1)), edge(Rise::SameAs(2)), edge(read)],
            3,
        );
        assert_eq!(settled[0], settled[2]);
        assert_eq!(settled[1], settled[2]);
    }

    #[test]
    fn slopes_taken_over_in_a_circle_say_nothing() {
        let settled = settle(&[edge(Rise::SameAs(1)), edge(Rise::SameAs(0))], 2);
        assert_eq!(settled, [SettledRise::Unknown, SettledRise::Unknown]);
    }

    #[test]
    fn with_no_edges_nothing_is_known_of_any_leg() {
        assert_eq!(settle(&[], 3), vec![SettledRise::Unknown; 3]);
    }
}

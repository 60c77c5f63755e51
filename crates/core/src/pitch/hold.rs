//! A phone laid on a slope, held still: when the tilt that it tells may be booked.
//!
//! Two seconds of looks are weighed at a time. Their spread says whether the hand is still; their
//! two halves, whether the phone creeps. The limits are our judgement; a still phone was measured
//! under 0.3 degrees RMS on a robot arm (Mourcou et al. 2015, doi 10.3390/s150923168).

use crate::units::Angle;

/// One look at the tilt.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct TiltReading {
    /// Milliseconds on a clock that only goes forward.
    pub at_ms: f64,
    /// The tilt; negative where the phone's head points down the slope.
    pub tilt: Angle,
}

/// How long a phone must be still, milliseconds.
pub const WINDOW_MS: f64 = 2000.0;
/// How long a look stands for the tilt until the next one, milliseconds.
const STANDS_MS: f64 = 50.0;
/// Largest standard deviation of the samples of a phone held still.
pub const MOST_SPREAD: Angle = Angle::degrees(0.15);
/// Largest difference between the means of the two halves of the window.
pub const MOST_CREEP: Angle = Angle::degrees(0.1);
/// The fewest looks that say anything of their spread.
const FEWEST_LOOKS: usize = 8;

/// What a window of looks says.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SteadyTilt {
    /// The slope: their mean, whichever way the phone lay.
    pub slope: Angle,
    /// One standard deviation of a single look.
    pub spread: Angle,
    /// Whether it may be booked as it is.
    pub hold: Hold,
}

/// How a phone was held.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Hold {
    /// Two seconds are not over.
    Begun,
    /// The looks scatter, or creep.
    Moving,
    /// Still for two seconds.
    Still,
    /// Exactly level at every look: a sensor that does not feel the tilt tells that, a roof never.
    Nothing,
}

/// Weighs the last two seconds of looks, the oldest first; none where there is no look.
#[must_use]
pub fn hold(looks: &[TiltReading]) -> Option<SteadyTilt> {
    let last = looks.last()?;
    let begins = last.at_ms + STANDS_MS - WINDOW_MS;
    // The look just before the window says what the tilt was when it began.
    let first = looks
        .iter()
        .rposition(|look| look.at_ms <= begins)
        .unwrap_or(0);
    let window = &looks[first..];
    let is_whole = window[0].at_ms <= begins && window.len() >= FEWEST_LOOKS;
    let tilts: Vec<f64> = window.iter().map(|look| look.tilt.in_degrees()).collect();
    let (early, late) = tilts.split_at(tilts.len() / 2);
    let spread = spread(&tilts);
    let hold = if !is_whole {
        Hold::Begun
    } else if tilts.iter().all(|tilt| tilt.abs() < f64::EPSILON) {
        Hold::Nothing
    } else if spread <= MOST_SPREAD.in_degrees()
        && (mean(early) - mean(late)).abs() <= MOST_CREEP.in_degrees()
    {
        Hold::Still
    } else {
        Hold::Moving
    };
    Some(SteadyTilt {
        slope: Angle::degrees(mean(&tilts).abs()),
        spread: Angle::degrees(spread),
        hold,
    })
}

fn mean(values: &[f64]) -> f64 {
    values.iter().sum::<f64>() / values.len().max(1) as f64
}

fn spread(values: &[f64]) -> f64 {
    let middle = mean(values);
    let squares: f64 = values.iter().map(|value| (value - middle).powi(2)).sum();
    (squares / values.len().saturating_sub(1).max(1) as f64).sqrt()
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Looks each 50 ms for so many seconds; `tilt` of the count.
    fn looks(seconds: f64, tilt: impl Fn(u32) -> f64) -> Vec<TiltReading> {
        let count = (seconds * 20.0) as u32;
        (0..=count)
            .map(|i| TiltReading {
                at_ms: 1000.0 + 50.0 * f64::from(i),
                tilt: Angle::degrees(tilt(i)),
            })
            .collect()
    }

    /// Up and down by so much, with no drift: a spread of about as much.
    fn trembling(i: u32, by: f64) -> f64 {
        [by, -by, -by, by][i as usize % 4]
    }

    fn held(looks: &[TiltReading]) -> Hold {
        hold(looks).unwrap().hold
    }

    #[test]
    fn nothing_is_said_before_two_seconds_are_over() {
        assert_eq!(hold(&[]), None);
        assert_eq!(held(&looks(1.9, |_| 26.6)), Hold::Begun);
        // The last look stands for the twentieth of a second that follows it.
        assert_eq!(held(&looks(1.95, |_| 26.6)), Hold::Still);
    }

    #[test]
    fn a_hand_that_trembles_by_a_twentieth_of_a_degree_is_still_and_by_a_whole_one_is_not() {
        assert_eq!(
            held(&looks(2.0, |i| 26.6 + trembling(i, 0.05))),
            Hold::Still
        );
        assert_eq!(
            held(&looks(2.0, |i| 26.6 + trembling(i, 1.0))),
            Hold::Moving
        );
    }

    #[test]
    fn a_phone_that_creeps_is_not_still_though_it_scatters_little() {
        let creeping = looks(2.0, |i| 26.6 + 0.006 * f64::from(i));
        let told = hold(&creeping).unwrap();
        assert!(told.spread <= MOST_SPREAD);
        assert_eq!(told.hold, Hold::Moving);
    }

    #[test]
    fn what_was_before_the_window_is_forgotten() {
        let laid_down = looks(6.0, |i| if i < 80 { 60.0 } else { 26.6 });
        let told = hold(&laid_down).unwrap();
        assert_eq!(told.hold, Hold::Still);
        assert!((told.slope.in_degrees() - 26.6).abs() < 1e-9);
    }

    #[test]
    fn head_down_or_head_up_is_the_same_slope() {
        let told = hold(&looks(2.0, |_| -26.0)).unwrap();
        assert!((told.slope.in_degrees() - 26.0).abs() < 1e-9);
    }

    #[test]
    fn exactly_level_at_every_look_is_no_reading() {
        assert_eq!(held(&looks(2.0, |_| 0.0)), Hold::Nothing);
    }

    #[test]
    fn a_few_looks_far_apart_prove_no_still_hand() {
        let few: Vec<TiltReading> = looks(2.0, |_| 26.6).into_iter().step_by(10).collect();
        assert_eq!(held(&few), Hold::Begun);
    }
}

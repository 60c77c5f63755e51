//! The one small language in which tests describe a house.
//!
//! ```
//! use eavebook_houses::house;
//! let survey = house("60' out 40' out 24' out 16' in 36' out 24' out").pitch(6.0).survey();
//! assert_eq!(survey.bodies[0].readings.len(), 6);
//! ```
//!
//! The walk goes round the outline with the building on the left: after each length stands the
//! corner at its far end, `out` round a corner of the building, `in` into one, `out 45` or
//! `in 30` by another angle, `straight` by none. The last corner is the first one again. Legs and
//! corners count from 0, as in the survey. Every leg is read once, exactly, until told otherwise.
//!
//! ```
//! use eavebook_houses::house;
//! let told = house("60' out 30' out 60' out 30' out").misread(2, "50'").solve();
//! assert_eq!(told.suspect_legs(), [0, 2]);
//! ```

mod house;
mod noise;
mod outlines;
mod told;
mod twelve;
mod walk;

pub use house::{Bodies, House, house};
pub use noise::Noise;
pub use outlines::{Grid, Numbers, cells, tangle, thousand};
pub use told::Told;
pub use twelve::{body, box_at, twelve};

#[cfg(test)]
mod tests {
    use super::*;
    use eavebook_core::survey::Span;

    #[test]
    fn an_l_comes_round() {
        let l = house("60' out 40' out 24' out 16' in 36' out 24' out");
        assert_eq!(l.true_corners().len(), 6);
        assert!((l.true_corners()[2].y - 40.0).abs() < 1e-9);
    }

    #[test]
    fn a_misread_leg_keeps_its_earlier_reading() {
        let body = house("60' out 30' out 60' out 30' out")
            .read_each(2)
            .misread(2, "50'")
            .body();
        let of_leg_2: Vec<f64> = body
            .readings
            .iter()
            .filter(|reading| reading.span == Span::Leg(2))
            .map(|reading| reading.value.in_feet())
            .collect();
        assert_eq!(body.readings.len(), 8);
        assert!((of_leg_2[0] - 60.0).abs() < 1e-9 && (of_leg_2[1] - 50.0).abs() < 1e-9);
    }

    #[test]
    fn a_tie_across_a_notch_is_read_as_it_lies() {
        let body = house("60' out 40' out 24' out 16' in 36' out 24' out")
            .tie(2, 4)
            .body();
        let tie = body.readings.last().expect("the tie").value.in_feet();
        assert!((tie - 24.0_f64.hypot(16.0)).abs() < 1e-9);
    }

    #[test]
    fn inches_stand_in_the_walk_as_on_the_tape() {
        let body = house("20' 6\" out 10' 0 1/2\" out 20' 6\" out 10' 0 1/2\" out").body();
        assert!((body.readings[1].value.in_inches() - 120.5).abs() < 1e-9);
    }
}

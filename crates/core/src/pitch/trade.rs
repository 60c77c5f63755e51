//! The slopes that roofs are framed to, and how often each is met.

use crate::units::Pitch;

/// Rise in 12 and how often whole pitches near it are met, against 4 to 6 in 12 as one; linear
/// between. From memory and from common practice, not from counts.
const MET: [(f64, f64); 12] = [
    (0.0, 0.0),
    (2.0, 0.3),
    (3.0, 0.6),
    (4.0, 1.0),
    (6.0, 1.0),
    (8.0, 0.8),
    (10.0, 0.5),
    (12.0, 0.5),
    (14.0, 0.15),
    (16.0, 0.05),
    (24.0, 0.02),
    (48.0, 0.01),
];

/// A half pitch is met this much less often than a whole one beside it.
const HALF: f64 = 0.08;

/// Every trade pitch from 1/2 to 48 in 12, by halves, with its weight before any reading.
pub(super) fn trade_pitches() -> impl Iterator<Item = (Pitch, f64)> {
    (1_u32..=96).map(|halves| {
        let rise = f64::from(halves) / 2.0;
        let kind = if halves % 2 == 0 { 1.0 } else { HALF };
        (Pitch::rise_in_12(rise), kind * met(rise))
    })
}

fn met(rise: f64) -> f64 {
    MET.windows(2)
        .find(|pair| rise <= pair[1].0)
        .map_or(0.0, |pair| {
            let ((low, there), (high, here)) = (pair[0], pair[1]);
            there + (here - there) * (rise - low) / (high - low)
        })
}

#[cfg(test)]
mod tests {
    use super::*;

    fn weight(rise: f64) -> f64 {
        trade_pitches()
            .find(|(pitch, _)| (pitch.in_12() - rise).abs() < 1e-9)
            .map_or(0.0, |(_, weight)| weight)
    }

    #[test]
    fn whole_pitches_are_weighed_along_a_line_between_those_known() {
        assert!((weight(5.0) - 1.0).abs() < 1e-12);
        assert!((weight(7.0) - 0.9).abs() < 1e-12);
        assert!((weight(9.0) - 0.65).abs() < 1e-12);
    }

    #[test]
    fn half_pitches_are_rare() {
        assert!((weight(5.5) - 0.08).abs() < 1e-12);
    }
}

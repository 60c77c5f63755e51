//! Whole thousandths of an inch: from here on two programs count the same pieces.

/// Inches as whole mils, half a mil up.
pub(super) fn mil(inches: f64) -> i64 {
    (inches * 1000.0 + 0.5).floor() as i64
}

/// Feet as whole mils.
pub(super) fn mil_of_feet(feet: f64) -> i64 {
    mil(12.0 * feet)
}

/// The next whole number, where rounding of doubles does not count.
pub(super) fn up(x: f64) -> u64 {
    (x - 1e-6).ceil().max(0.0) as u64
}

/// `a / b`, up; `b` is above 0.
pub(super) fn ceil_div(a: i64, b: i64) -> i64 {
    a.div_euclid(b) + i64::from(a.rem_euclid(b) > 0)
}

/// `a / b`, up, never below nothing: a count.
pub(super) fn count(a: i64, b: i64) -> u64 {
    ceil_div(a, b).max(0).unsigned_abs()
}

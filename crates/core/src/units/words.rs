//! Numbers as a person reads them.

/// A number to the nearest whole, its thousands grouped by commas: `-1,234`.
pub(super) fn grouped(number: f64) -> String {
    let digits = format!("{:.0}", number.abs());
    let sign = if number < 0.0 && digits != "0" {
        "-"
    } else {
        ""
    };
    sign.to_owned() + &group(&digits)
}

/// Whole digits with a comma before each third from the right.
pub(super) fn group(digits: &str) -> String {
    let mut grouped = String::with_capacity(digits.len() + digits.len() / 3);
    for (place, digit) in digits.chars().enumerate() {
        if place > 0 && (digits.len() - place).is_multiple_of(3) {
            grouped.push(',');
        }
        grouped.push(digit);
    }
    grouped
}

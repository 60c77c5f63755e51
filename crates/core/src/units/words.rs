//! Numbers and quoted texts as a person reads them.

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

/// A text as it can stand in one line of a refusal: shortened, control characters escaped.
pub(crate) fn quotable(text: &str) -> String {
    const LONGEST: usize = 60;
    let mut quoted = String::new();
    for (place, sign) in text.chars().enumerate() {
        if place == LONGEST {
            quoted.push('…');
            break;
        }
        if sign.is_control() || turns_or_hides(sign) {
            quoted.extend(sign.escape_default());
        } else {
            quoted.push(sign);
        }
    }
    quoted
}

/// Signs that break a line or turn the reading direction of what stands around them, or show
/// nothing at all (Unicode line separators, bidirectional and zero-width formats).
const fn turns_or_hides(sign: char) -> bool {
    matches!(
        sign,
        '\u{200b}'..='\u{200f}'
            | '\u{2028}'..='\u{202e}'
            | '\u{2060}'..='\u{206f}'
            | '\u{61c}'
            | '\u{feff}'
    )
}

//! Lengths, angles, pitch, areas and money as types; tape text to value and back.
//!
//! A [`Tape`] keeps what was read: its text, and feet, inches and fraction as whole numbers or
//! feet and metres as decimals. Only its [`Length`] is a binary fraction, so text to value to text
//! never drifts.

mod angle;
mod area;
mod figure;
mod length;
mod money;
mod spoken;
mod tape;
mod tape_reader;
mod tape_refusal;
mod words;

pub use angle::{Angle, Pitch};
pub use area::Area;
pub use figure::Figure;
pub use length::{Length, RoundTo};
pub use money::{Money, MoneyRefusal};
pub use tape::Tape;
pub use tape_refusal::{TapeFault, TapeRefusal};

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

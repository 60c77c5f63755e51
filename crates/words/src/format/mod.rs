//! How figures, names and dates are written in a language.
//!
//! Numbers follow the locale es-US in Spanish, so `2,101.5` and `$11,990` read alike in both.

mod count;
mod covering;
mod en;
mod es;
mod figures;
mod noun;
mod quoted;
mod reading;
mod spoken;
mod when;

pub use count::Count;
pub use covering::{CoveringName, DeckName};
pub use en::En;
pub use es::Es;
pub use figures::grouped;
pub use noun::{Gender, Noun};
pub use quoted::Quoted;
pub use reading::ReadingText;

use crate::Language;
use chrono::{DateTime, FixedOffset, NaiveDate};
use eavebook_core::book::house_side::HouseSide;
use eavebook_core::book::keypad::{SlotContent, SlotUnit};
use eavebook_core::book::kinds::{EndKind, ItemKind, SizeOf, Thing};
use eavebook_core::naming::{EdgeName, FaceName};
use eavebook_core::roof::EdgeKind;
use eavebook_core::takeoff::{BootKind, OrderItem, Unit};
use eavebook_core::units::{Area, Figure, Length, Money, Pitch, RoundTo, Tape};

/// Writes arguments of messages in one language.
pub trait Format {
    /// Which language.
    fn language(&self) -> Language;

    /// Names of a unit of length: foot, inch, meter.
    #[doc(hidden)]
    fn units(&self) -> figures::Units;

    /// The singular or plural of a noun: `bundle`, `bundles`.
    fn noun(&self, noun: Noun, n: u64) -> &'static str;

    /// `front`, `frente`.
    fn side(&self, side: HouseSide) -> &'static str;

    /// `Front 2`, `Front gable`, `Back 2b`; Spanish `Frente 2`, `Gablete del frente`.
    fn face(&self, face: FaceName) -> String;

    /// `eave`, `alero`.
    fn edge_kind(&self, kind: EdgeKind) -> &'static str;

    /// `eave 4`, `ridge 2`, `leg 3`; Spanish `alero 4`, `cumbrera 2`, `lado 3`.
    fn edge(&self, edge: EdgeName) -> String {
        let kind = match edge.kind {
            Some(kind) => self.edge_kind(kind),
            None => self.noun(Noun::Leg, 1),
        };
        match edge.letter {
            Some(letter) => format!("{kind} {}{letter}", edge.number),
            None => format!("{kind} {}", edge.number),
        }
    }

    /// `pipe`, `tubo`.
    fn item(&self, item: ItemKind) -> &'static str;

    /// `width`, `ancho`.
    fn size(&self, size: SizeOf) -> &'static str;

    /// `a slope`, `un agua`.
    fn end(&self, end: EndKind) -> &'static str;

    /// The unit of a slot of the keypad: `ft`, `pies`.
    fn slot_unit(&self, unit: SlotUnit) -> &'static str;

    /// The fraction of no eighths: `even`, `exacto`.
    fn even(&self) -> &'static str;

    /// `leg 4`, `tie 2-5`, `pipe 1 width`; Spanish `lado 4`, `diagonal 2-5`, `ancho de tubo 1`.
    fn thing(&self, thing: &Thing) -> String;

    /// A line of the order list: `ice and water barrier`, `membrana contra hielo y agua`.
    fn order_item(&self, item: &OrderItem) -> String;

    /// `pipe boot (3 in)`, `pipe boots (3 in)`; Spanish `botas para tubo de 3 pulg`. `size`: inches as
    /// text.
    fn boots(&self, kind: BootKind, size: &str, n: u64) -> String;

    /// `plank`, `tabla`.
    fn deck(&self, deck: &DeckName) -> String;

    /// `wood shake`, `tejamanil`.
    fn covering(&self, covering: &CoveringName) -> String;

    /// `Nov 30, 2026`, `30 nov 2026`.
    fn date(&self, date: NaiveDate) -> String;

    /// `2:41 pm`, `2:41 p. m.`
    fn time_of_day(&self, time: &DateTime<FixedOffset>) -> String;

    /// `a, b and c`; Spanish `a, b y c`, with `e` before the sound i.
    fn and(&self, parts: &[String]) -> String;

    /// `a, b or c`; Spanish `a, b o c`, with `u` before the sound o.
    fn or(&self, parts: &[String]) -> String;

    /// A reading as spoken back, digits one by one: "four two feet, seven and a half inches".
    fn spoken(&self, tape: &Tape) -> String;

    /// An angle as spoken, to the tenth of a degree: "two six point six degrees".
    fn spoken_degrees(&self, degrees: f64) -> String;

    /// `not known`.
    fn not_known(&self) -> &'static str;

    /// The content of a slot of the keypad: `42`, `1/2`, `even`; empty if nothing is typed.
    fn slot_content(&self, content: &SlotContent) -> String {
        match content {
            SlotContent::Empty => String::new(),
            SlotContent::Digits(digits) => digits.clone(),
            SlotContent::Eighths(0) => self.even().to_owned(),
            SlotContent::Eighths(4) => "1/2".to_owned(),
            SlotContent::Eighths(eighths) if eighths.is_multiple_of(2) => {
                format!("{}/4", eighths / 2)
            }
            SlotContent::Eighths(eighths) => format!("{eighths}/8"),
        }
    }

    /// `leg 3`, `lado 3`; legs count from 1.
    fn leg(&self, leg: u32) -> String {
        self.thing(&Thing::Leg { leg })
    }

    /// `Leg 3`: a thing at the beginning of a sentence.
    fn thing_first(&self, thing: &Thing) -> String {
        capital(&self.thing(thing))
    }

    /// A reading as the tape said it: `42 ft 7 1/2 in`, `42 pies 7 1/2 pulg`, `12.25 m`.
    fn tape(&self, tape: &Tape) -> String {
        figures::tape(tape.marks(), &self.units())
    }

    /// A reading as it was recorded: `42 ft 7 1/2 in`, or the text itself in quotation marks.
    fn reading(&self, reading: &ReadingText) -> String {
        match reading {
            ReadingText::Tape(tape) => self.tape(tape),
            ReadingText::Other(text) => self.quoted(text),
        }
    }

    /// A length to the inch: `18 ft 2 in`, `-2 in`.
    fn length(&self, length: Length) -> String {
        self.rounded(length, RoundTo::Inch)
    }

    /// A length, rounded: `18 ft 2 in`, `40.3 ft`, `12.25 m`.
    fn rounded(&self, length: Length, to: RoundTo) -> String {
        figures::length(length, to, &self.units()).unwrap_or_else(|| self.not_known().to_owned())
    }

    /// A length for a drawing: `14' 3"` in feet and inches, else as [`Format::rounded`].
    fn short_length(&self, length: Length, to: RoundTo) -> String {
        match to {
            RoundTo::Inch | RoundTo::EighthInch => {
                figures::drawn(length, to).unwrap_or_else(|| self.not_known().to_owned())
            }
            RoundTo::TenthFoot | RoundTo::HundredthFoot | RoundTo::Centimeter => {
                self.rounded(length, to)
            }
        }
    }

    /// The ± of a length, rounded up: `± 2 in`.
    fn length_spread(&self, sigma: Length, to: RoundTo) -> String {
        format!("± {}", self.rounded(figures::rounded_up(sigma, to), to))
    }

    /// `18 ft 2 in ± 2 in`.
    fn length_figure(&self, figure: Figure<Length>, to: RoundTo) -> String {
        format!(
            "{} {}",
            self.rounded(figure.value, to),
            self.length_spread(figure.sigma, to)
        )
    }

    /// `2,013 sq ft`, `2,013 pies²`.
    fn area(&self, area: Area) -> String {
        let square_feet = area.in_square_feet();
        if square_feet.is_finite() {
            format!("{} {}", grouped(square_feet, 0), self.units().square_feet)
        } else {
            self.not_known().to_owned()
        }
    }

    /// The ± of an area, rounded up: `± 35 sq ft`.
    fn area_spread(&self, sigma: Area) -> String {
        format!(
            "± {}",
            self.area(Area::square_feet(sigma.in_square_feet().ceil()))
        )
    }

    /// `2,013 ± 35 sq ft`: the unit once.
    fn area_figure(&self, figure: Figure<Area>) -> String {
        let (value, sigma) = (figure.value.in_square_feet(), figure.sigma.in_square_feet());
        format!(
            "{} ± {} {}",
            grouped(value, 0),
            grouped(sigma.ceil(), 0),
            self.units().square_feet
        )
    }

    /// `20.1 squares`, `1 square`, `20.1 cuadros`.
    fn squares(&self, area: Area) -> String {
        let tenths = (area.in_squares() * 10.0).round() / 10.0;
        let n = if (tenths - 1.0).abs() < 1e-9 { 1 } else { 2 };
        format!("{} {}", grouped(tenths, 1), self.noun(Noun::Square, n))
    }

    /// To the cent: `$11,987.47`.
    fn money(&self, money: Money) -> String {
        figures::money(money, 2)
    }

    /// To the dollar: `$11,987`.
    fn dollars(&self, money: Money) -> String {
        figures::money(money, 0)
    }

    /// `6 in 12`, `6 en 12`; to the tenth.
    fn pitch(&self, pitch: Pitch) -> String {
        let tenths = (pitch.in_12() * 10.0).round() / 10.0;
        format!("{} {} 12", grouped(tenths, 1), self.units().rise_in)
    }

    /// `6 in 12 ± 0.3`, the ± rounded up; `sigma_in_12` in rise on 12, `None` for a pitch that was
    /// given as a number.
    fn pitch_figure(&self, pitch: Pitch, sigma_in_12: Option<f64>) -> String {
        let pitch = self.pitch(pitch);
        match sigma_in_12 {
            Some(sigma) => format!("{pitch} ± {}", grouped((sigma * 10.0).ceil() / 10.0, 1)),
            None => pitch,
        }
    }

    /// An amount of material, to the tenth: `2,101 pieces`, `169.3 ft`.
    fn quantity(&self, amount: f64, unit: Unit) -> String {
        let tenths = (amount * 10.0).round() / 10.0;
        let is_one = (tenths - 1.0).abs() < 1e-9;
        let units = self.units();
        let unit = match unit {
            Unit::Piece => self.noun(Noun::Piece, if is_one { 1 } else { 2 }),
            Unit::Feet if is_one => units.foot,
            Unit::Feet => units.feet,
            Unit::SquareFeet => units.square_feet,
            Unit::Pounds => units.pounds,
        };
        format!("{} {unit}", grouped(tenths, 1))
    }

    /// `1 bundle`, `2 bundles`, `1,200 sq ft` of a noun: a count with its noun.
    fn count(&self, count: Count) -> String {
        format!(
            "{} {}",
            grouped(count.n as f64, 0),
            self.noun(count.noun, count.n)
        )
    }

    /// A number to `places` decimals at most, without trailing zeros, thousands grouped.
    fn number(&self, number: f64, places: usize) -> String {
        grouped(number, places)
    }

    /// A person's own words, in quotation marks: `"the blue house"`.
    fn quoted(&self, quoted: &Quoted) -> String {
        format!("\"{}\"", quoted.line())
    }

    /// `Nov 30, 2026, 2:41 pm`.
    fn day_and_time(&self, time: &DateTime<FixedOffset>) -> String {
        format!(
            "{}, {}",
            self.date(time.date_naive()),
            self.time_of_day(time)
        )
    }
}

/// A text as the beginning of a sentence: `Back 2`.
#[must_use]
pub fn capital(text: &str) -> String {
    let mut letters = text.chars();
    letters.next().map_or_else(String::new, |first| {
        first.to_uppercase().collect::<String>() + letters.as_str()
    })
}

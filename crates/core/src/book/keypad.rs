//! The keypad on which a length is typed: a slot a unit, no decimal point, and a reason for every
//! key that does nothing.

use super::kinds::TapeMarks;
use crate::units::Tape;
use serde::{Deserialize, Serialize};

/// A key of the keypad.
#[cfg_attr(feature = "typescript", derive(ts_rs::TS))]
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(tag = "key", rename_all = "snake_case")]
pub enum Key {
    /// A digit.
    Digit {
        /// 0 to 9.
        digit: u8,
    },
    /// To the next slot: `ft` or `m`.
    Whole,
    /// To the inches slot.
    Inches,
    /// A fraction of an inch, eighths 0 (`even`) to 7.
    Eighths {
        /// 0 to 7.
        eighths: u8,
    },
    /// Take the last key back.
    TakeBackOne,
    /// Book it.
    BookIt,
}

/// What a fast double press meant.
#[cfg_attr(feature = "typescript", derive(ts_rs::TS))]
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Meant {
    /// Two digits.
    Two,
    /// One digit.
    One,
}

/// A slot of the keypad.
#[cfg_attr(feature = "typescript", derive(ts_rs::TS))]
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Slot {
    /// Whole feet.
    Ft,
    /// Inches.
    In,
    /// Fraction of an inch.
    Fraction,
    /// Tenths of a foot.
    Tenths,
    /// Whole metres.
    M,
    /// Centimetres.
    Cm,
}

/// Finest fraction that is read.
#[cfg_attr(feature = "typescript", derive(ts_rs::TS))]
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum FractionStep {
    /// Eighths of an inch.
    #[default]
    Eighths,
    /// Quarters of an inch.
    Quarters,
}

/// A keypad with what was typed on it: the keys taken so far, from which all else follows. So
/// taking one back is exact, and a keypad that was kept comes back as it was.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Keypad {
    tape: TapeMarks,
    step: FractionStep,
    keys: Vec<Key>,
    /// The digit that came twice so fast that it may have been one press.
    double: Option<u8>,
}

/// One slot with what stands in it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct SlotState {
    /// Which.
    pub slot: Slot,
    /// Digits, or `1/2`; empty when nothing was typed.
    pub typed: String,
    /// Unit beside it.
    pub unit: &'static str,
    /// Where the next key goes.
    pub active: bool,
}

/// Presses of one digit closer than this may be one press of a soft or gloved finger that bounced,
/// milliseconds (our judgement).
const BOUNCE_MS: u32 = 120;
/// The longest tape in common use, feet.
const LONGEST_TAPE_FT: u32 = 300;
/// The same in whole metres.
const LONGEST_TAPE_M: u32 = 91;

/// Why a key did nothing. Nothing typed is lost by it.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
pub enum KeyRefusal {
    /// A digit past 9.
    #[error("{digit} is no digit. Type 0 to 9.")]
    NoDigit {
        /// What came.
        digit: u8,
    },
    /// A number that begins with 0.
    #[error("0 {unit} stands already. Take it back first, or go on with the next unit.")]
    AfterZero {
        /// Unit of the slot.
        unit: &'static str,
    },
    /// Longer than a tape.
    #[error(
        "{typed} {unit} is longer than a tape. Did you read {} {unit}?",
        shorter(typed)
    )]
    LongerThanTape {
        /// What it would have been.
        typed: String,
        /// Unit of the slot.
        unit: &'static str,
    },
    /// Twelve inches or more.
    #[error("{inches} in is over a foot. Did you read {} ft {} in?", inches / 12, inches % 12)]
    OverFoot {
        /// What it would have been.
        inches: u32,
    },
    /// The slot holds no more.
    #[error("{typed} {unit} is all that slot holds. Book it, or take one back.")]
    SlotFull {
        /// What stands there.
        typed: String,
        /// Unit of the slot.
        unit: &'static str,
    },
    /// The key to the next slot, with nothing in this one.
    #[error("How many {unit}? Type 0 for none.")]
    NothingBefore {
        /// Unit of the slot.
        unit: &'static str,
    },
    /// The key to the next slot, past it.
    #[error("{unit} stands already. The rest of the length comes now.")]
    UnitStands {
        /// Which unit.
        unit: &'static str,
    },
    /// A digit after a fraction.
    #[error("The fraction stands already. Book it, or take it back first.")]
    FractionStands,
    /// A fraction before the feet.
    #[error("A fraction is one of an inch. Press ft first.")]
    FractionBeforeFeet,
    /// An eighth on a keypad of quarters.
    #[error("{eighths}/8 is no quarter. Fractions are set to quarters of an inch in Settings.")]
    NoQuarter {
        /// What came.
        eighths: u8,
    },
    /// A key that this tape has not.
    #[error("This tape has no inches. Change it in Settings under My tape reads.")]
    NoInches,
    /// Nothing to take back or to book.
    #[error("Nothing is typed yet. Type what the tape says.")]
    NothingTyped,
    /// A number without its unit.
    #[error("{typed} what? Press {unit}.")]
    NoUnit {
        /// What stands there.
        typed: String,
        /// The key to press.
        unit: &'static str,
    },
    /// A length of nothing.
    #[error("0 is no length. Take it back and type what the tape says.")]
    Zero,
    /// `BookIt` is answered by [`Keypad::reading`].
    #[error("Book it with what is typed.")]
    NotTyping,
}

impl KeyRefusal {
    /// Names the sentence, so that another language finds its own.
    #[must_use]
    pub fn code(&self) -> &'static str {
        match self {
            KeyRefusal::NoDigit { .. } => "no_digit",
            KeyRefusal::AfterZero { .. } => "after_zero",
            KeyRefusal::LongerThanTape { .. } => "longer_than_tape",
            KeyRefusal::OverFoot { .. } => "inches_over_eleven",
            KeyRefusal::SlotFull { .. } => "slot_full",
            KeyRefusal::NothingBefore { .. } => "nothing_before",
            KeyRefusal::UnitStands { .. } => "unit_stands",
            KeyRefusal::FractionStands => "fraction_stands",
            KeyRefusal::FractionBeforeFeet => "fraction_before_feet",
            KeyRefusal::NoQuarter { .. } => "no_quarter",
            KeyRefusal::NoInches => "no_inches",
            KeyRefusal::NothingTyped => "nothing_typed",
            KeyRefusal::NoUnit { .. } => "no_unit",
            KeyRefusal::Zero => "zero_length",
            KeyRefusal::NotTyping => "not_typing",
        }
    }
}

/// A number without its last digit: the likelier reading of one that is too long.
fn shorter(typed: &str) -> &str {
    &typed[..typed.len().saturating_sub(1)]
}

/// Slots as the keys filled them.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
struct Typed {
    whole: String,
    parts: String,
    eighths: Option<u8>,
    at: At,
}

/// Where the next key goes.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
enum At {
    #[default]
    Whole,
    Parts,
    Fraction,
}

impl Keypad {
    /// A keypad with nothing typed.
    #[must_use]
    pub fn new(tape: TapeMarks, step: FractionStep) -> Keypad {
        Keypad {
            tape,
            step,
            keys: Vec::new(),
            double: None,
        }
    }

    /// How the tape is marked.
    #[must_use]
    pub fn tape(&self) -> TapeMarks {
        self.tape
    }

    /// Nothing is typed.
    #[must_use]
    pub fn is_empty(&self) -> bool {
        self.keys.is_empty()
    }

    /// The digit that came twice in one bounce, to be asked about; it never stands in the way.
    #[must_use]
    pub fn double(&self) -> Option<u8> {
        self.double
    }

    /// Takes one key. `since_ms`: milliseconds since the press before.
    ///
    /// # Errors
    /// Why the key did nothing; what was typed stays as it was.
    pub fn press(&mut self, key: Key, since_ms: Option<u32>) -> Result<(), KeyRefusal> {
        if key == Key::TakeBackOne {
            self.keys.pop().ok_or(KeyRefusal::NothingTyped)?;
            self.double = None;
            return Ok(());
        }
        // Tried on a copy, so that a refused key leaves no trace.
        self.typed().take(key, self.tape, self.step)?;
        let bounced = since_ms.is_some_and(|since| since < BOUNCE_MS);
        self.double = match (key, self.keys.last()) {
            (Key::Digit { digit }, Some(last)) if bounced && *last == key => Some(digit),
            (Key::Digit { .. }, _)
            | (
                Key::Whole | Key::Inches | Key::Eighths { .. } | Key::TakeBackOne | Key::BookIt,
                _,
            ) => None,
        };
        self.keys.push(key);
        Ok(())
    }

    /// Answers the question about a double press; without one nothing changes.
    pub fn answer_double(&mut self, meant: Meant) {
        if self.double.take().is_some() && meant == Meant::One {
            self.keys.pop();
        }
    }

    /// The slots in order.
    #[must_use]
    pub fn slots(&self) -> Vec<SlotState> {
        let typed = self.typed();
        let slot = |slot, text: &str, unit, at| SlotState {
            slot,
            typed: text.to_owned(),
            unit,
            active: typed.at == at,
        };
        let (whole, parts) = units(self.tape);
        match self.tape {
            TapeMarks::FeetInches => vec![
                slot(Slot::Ft, &typed.whole, whole, At::Whole),
                slot(Slot::In, &typed.parts, parts, At::Parts),
                slot(Slot::Fraction, &fraction(typed.eighths), "", At::Fraction),
            ],
            TapeMarks::FeetTenths => vec![
                slot(Slot::Ft, &typed.whole, whole, At::Whole),
                slot(Slot::Tenths, &typed.parts, parts, At::Parts),
            ],
            TapeMarks::Meters => vec![
                slot(Slot::M, &typed.whole, whole, At::Whole),
                slot(Slot::Cm, &typed.parts, parts, At::Parts),
            ],
        }
    }

    /// What is typed, as tape text in the one form of the book: `42 ft 7 1/2 in`.
    ///
    /// # Errors
    /// Why it is no length yet.
    pub fn reading(&self) -> Result<String, KeyRefusal> {
        let typed = self.typed();
        let (whole, _) = units(self.tape);
        if self.keys.is_empty() {
            return Err(KeyRefusal::NothingTyped);
        }
        if typed.at == At::Whole {
            return Err(KeyRefusal::NoUnit {
                typed: typed.whole,
                unit: whole,
            });
        }
        let parts = if typed.parts.is_empty() {
            "0"
        } else {
            &typed.parts
        };
        let text = match self.tape {
            TapeMarks::FeetInches => {
                let fraction = fraction(typed.eighths.filter(|eighths| *eighths > 0));
                let inches = [parts, &fraction].join(" ");
                format!("{} ft {} in", typed.whole, inches.trim_end())
            }
            TapeMarks::FeetTenths => format!("{}.{parts} ft", typed.whole),
            TapeMarks::Meters => format!("{}.{parts:0>2} m", typed.whole),
        };
        let tape = Tape::read(&text).map_err(|_| KeyRefusal::Zero)?;
        if tape.length().is_a_reading() {
            Ok(tape.words())
        } else {
            Err(KeyRefusal::Zero)
        }
    }

    fn typed(&self) -> Typed {
        let mut typed = Typed::default();
        for key in &self.keys {
            // Each was taken once, so each is taken again.
            let taken = typed.take(*key, self.tape, self.step);
            debug_assert!(taken.is_ok(), "{key:?}");
        }
        typed
    }
}

impl Typed {
    fn take(&mut self, key: Key, tape: TapeMarks, step: FractionStep) -> Result<(), KeyRefusal> {
        match key {
            Key::Digit { digit } => self.take_digit(digit, tape),
            Key::Whole => self.take_whole(tape),
            Key::Inches => self.take_inches(tape),
            Key::Eighths { eighths } => self.take_eighths(eighths, tape, step),
            Key::TakeBackOne | Key::BookIt => Err(KeyRefusal::NotTyping),
        }
    }

    fn take_digit(&mut self, digit: u8, tape: TapeMarks) -> Result<(), KeyRefusal> {
        if digit > 9 {
            return Err(KeyRefusal::NoDigit { digit });
        }
        let (whole, parts) = units(tape);
        let (slot, unit) = match self.at {
            At::Whole => (&mut self.whole, whole),
            At::Parts => (&mut self.parts, parts),
            At::Fraction => return Err(KeyRefusal::FractionStands),
        };
        let is_decimal = self.at == At::Parts && tape == TapeMarks::FeetTenths;
        if slot == "0" && !is_decimal {
            return Err(KeyRefusal::AfterZero { unit });
        }
        let grown = format!("{slot}{digit}");
        let value: u32 = grown.parse().unwrap_or(u32::MAX);
        match (self.at, tape) {
            (At::Whole, TapeMarks::FeetInches | TapeMarks::FeetTenths)
                if value > LONGEST_TAPE_FT =>
            {
                return Err(KeyRefusal::LongerThanTape { typed: grown, unit });
            }
            (At::Whole, TapeMarks::Meters) if value > LONGEST_TAPE_M => {
                return Err(KeyRefusal::LongerThanTape { typed: grown, unit });
            }
            (At::Parts, TapeMarks::FeetInches) if value > 11 => {
                return Err(KeyRefusal::OverFoot { inches: value });
            }
            (At::Parts, TapeMarks::FeetTenths | TapeMarks::Meters) if grown.len() > 2 => {
                return Err(KeyRefusal::SlotFull {
                    typed: slot.clone(),
                    unit,
                });
            }
            (At::Whole | At::Parts | At::Fraction, _) => {}
        }
        *slot = grown;
        Ok(())
    }

    fn take_whole(&mut self, tape: TapeMarks) -> Result<(), KeyRefusal> {
        let (unit, _) = units(tape);
        match self.at {
            At::Whole if self.whole.is_empty() => Err(KeyRefusal::NothingBefore { unit }),
            At::Whole => {
                self.at = At::Parts;
                Ok(())
            }
            At::Parts | At::Fraction => Err(KeyRefusal::UnitStands { unit }),
        }
    }

    /// From the inches on to their fraction; a length under a foot may be typed as inches alone.
    fn take_inches(&mut self, tape: TapeMarks) -> Result<(), KeyRefusal> {
        if tape != TapeMarks::FeetInches {
            return Err(KeyRefusal::NoInches);
        }
        match self.at {
            At::Whole if self.whole.is_empty() => Err(KeyRefusal::NothingBefore { unit: "in" }),
            At::Whole => {
                let inches: u32 = self.whole.parse().unwrap_or(u32::MAX);
                if inches > 11 {
                    return Err(KeyRefusal::OverFoot { inches });
                }
                self.parts = std::mem::replace(&mut self.whole, "0".to_owned());
                self.at = At::Fraction;
                Ok(())
            }
            At::Parts => {
                self.at = At::Fraction;
                Ok(())
            }
            At::Fraction => Err(KeyRefusal::UnitStands { unit: "in" }),
        }
    }

    fn take_eighths(
        &mut self,
        eighths: u8,
        tape: TapeMarks,
        step: FractionStep,
    ) -> Result<(), KeyRefusal> {
        if tape != TapeMarks::FeetInches {
            return Err(KeyRefusal::NoInches);
        }
        if eighths > 7 {
            return Err(KeyRefusal::NoDigit { digit: eighths });
        }
        if self.at == At::Whole {
            return Err(KeyRefusal::FractionBeforeFeet);
        }
        if step == FractionStep::Quarters && !eighths.is_multiple_of(2) {
            return Err(KeyRefusal::NoQuarter { eighths });
        }
        self.eighths = Some(eighths);
        self.at = At::Fraction;
        Ok(())
    }
}

/// Units of the first two slots.
fn units(tape: TapeMarks) -> (&'static str, &'static str) {
    match tape {
        TapeMarks::FeetInches => ("ft", "in"),
        TapeMarks::FeetTenths => ("ft", "tenths"),
        TapeMarks::Meters => ("m", "cm"),
    }
}

/// `1/2`; `even` for 0 eighths, nothing where no fraction was typed.
fn fraction(eighths: Option<u8>) -> String {
    match eighths {
        None => String::new(),
        Some(0) => "even".to_owned(),
        Some(4) => "1/2".to_owned(),
        Some(quarters) if quarters.is_multiple_of(2) => format!("{}/4", quarters / 2),
        Some(eighths) => format!("{eighths}/8"),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    /// Keys as on the pad: digits, `f` for ft or m, `i` for in, `<` to take back, `/4` for 4/8.
    fn keys(text: &str) -> Vec<Key> {
        let mut signs = text.chars();
        let mut keys = Vec::new();
        while let Some(sign) = signs.next() {
            keys.push(match sign {
                'f' => Key::Whole,
                'i' => Key::Inches,
                '<' => Key::TakeBackOne,
                '/' => Key::Eighths {
                    eighths: digit(signs.next().unwrap()),
                },
                sign => Key::Digit { digit: digit(sign) },
            });
        }
        keys
    }

    fn digit(sign: char) -> u8 {
        u8::try_from(sign.to_digit(10).unwrap()).unwrap()
    }

    fn typed(tape: TapeMarks, text: &str) -> (Keypad, Vec<String>) {
        let mut pad = Keypad::new(tape, FractionStep::Eighths);
        let pressed = keys(text)
            .into_iter()
            .filter_map(|key| pad.press(key, None).err());
        let refused = pressed.map(|why| why.to_string()).collect();
        (pad, refused)
    }

    fn reads(tape: TapeMarks, text: &str) -> String {
        let (pad, refused) = typed(tape, text);
        assert_eq!(refused, Vec::<String>::new());
        pad.reading().unwrap_or_else(|why| why.to_string())
    }

    #[test]
    fn a_length_is_typed_slot_by_slot() {
        use TapeMarks::{FeetInches, FeetTenths, Meters};
        assert_eq!(reads(FeetInches, "42f7/4"), "42 ft 7 1/2 in");
        assert_eq!(reads(FeetInches, "42f7i/4"), "42 ft 7 1/2 in");
        assert_eq!(reads(FeetInches, "40f"), "40 ft");
        assert_eq!(reads(FeetInches, "42f/6"), "42 ft 3/4 in");
        assert_eq!(reads(FeetInches, "42f7/0"), "42 ft 7 in");
        assert_eq!(reads(FeetInches, "7i"), "7 in");
        assert_eq!(reads(FeetInches, "0f7"), "7 in");
        assert_eq!(reads(FeetTenths, "42f6"), "42.6 ft");
        assert_eq!(reads(FeetTenths, "42f06"), "42.06 ft");
        assert_eq!(reads(FeetTenths, "42f"), "42 ft");
        assert_eq!(reads(Meters, "12f5"), "12.05 m");
        assert_eq!(reads(Meters, "12f25"), "12.25 m");
    }

    #[test]
    fn a_number_without_its_unit_is_asked_what_it_is() {
        assert_eq!(reads(TapeMarks::FeetInches, "27"), "27 what? Press ft.");
        assert_eq!(reads(TapeMarks::Meters, "27"), "27 what? Press m.");
        assert_eq!(
            reads(TapeMarks::FeetInches, ""),
            "Nothing is typed yet. Type what the tape says."
        );
    }

    #[test]
    fn nothing_is_no_length() {
        let zero = "0 is no length. Take it back and type what the tape says.";
        assert_eq!(reads(TapeMarks::FeetInches, "0f"), zero);
        assert_eq!(reads(TapeMarks::FeetInches, "0f0/0"), zero);
    }

    #[test]
    fn an_impossible_key_says_why_and_changes_nothing() {
        let cases = [
            (
                "42f14",
                "14 in is over a foot. Did you read 1 ft 2 in?",
                "42 ft 1 in",
            ),
            (
                "42ff",
                "ft stands already. The rest of the length comes now.",
                "42 ft",
            ),
            (
                "400f",
                "400 ft is longer than a tape. Did you read 40 ft?",
                "40 ft",
            ),
            (
                "04f7",
                "0 ft stands already. Take it back first, or go on with the next unit.",
                "7 in",
            ),
            ("f42f", "How many ft? Type 0 for none.", "42 ft"),
            (
                "42i<2f",
                "42 in is over a foot. Did you read 3 ft 6 in?",
                "42 ft",
            ),
            (
                "/442f",
                "A fraction is one of an inch. Press ft first.",
                "42 ft",
            ),
            (
                "42f7/43",
                "The fraction stands already. Book it, or take it back first.",
                "42 ft 7 1/2 in",
            ),
            (
                "<42f",
                "Nothing is typed yet. Type what the tape says.",
                "42 ft",
            ),
        ];
        for (text, said, reading) in cases {
            let (pad, refused) = typed(TapeMarks::FeetInches, text);
            assert_eq!(
                (refused, pad.reading()),
                (vec![said.to_owned()], Ok(reading.to_owned()))
            );
        }
    }

    #[test]
    fn keys_that_a_tape_has_not_are_refused_by_name() {
        let (_, refused) = typed(TapeMarks::FeetTenths, "42f6i/4");
        let said = "This tape has no inches. Change it in Settings under My tape reads.";
        assert_eq!(refused, [said, said]);
        let mut pad = Keypad::new(TapeMarks::FeetInches, FractionStep::Quarters);
        for key in keys("42f") {
            pad.press(key, None).unwrap();
        }
        let said = pad
            .press(Key::Eighths { eighths: 3 }, None)
            .unwrap_err()
            .to_string();
        let why = "3/8 is no quarter. Fractions are set to quarters of an inch in Settings.";
        assert_eq!(said, why);
    }

    #[test]
    fn a_bounce_is_kept_and_asked_about_and_one_answer_takes_it_back() {
        let two = Key::Digit { digit: 2 };
        let mut pad = Keypad::new(TapeMarks::FeetInches, FractionStep::Eighths);
        pad.press(two, None).unwrap();
        pad.press(two, Some(119)).unwrap();
        assert_eq!(pad.double(), Some(2));
        let mut asked_no_more = pad.clone();
        asked_no_more.press(Key::Whole, Some(400)).unwrap();
        assert_eq!(asked_no_more.double(), None);
        assert_eq!(asked_no_more.reading(), Ok("22 ft".to_owned()));
        let mut kept = pad.clone();
        kept.answer_double(Meant::Two);
        pad.answer_double(Meant::One);
        assert_eq!(
            (
                kept.slots()[0].typed.as_str(),
                pad.slots()[0].typed.as_str()
            ),
            ("22", "2")
        );
        pad.press(two, Some(120)).unwrap();
        assert_eq!(pad.double(), None);
    }

    #[test]
    fn the_slots_show_where_the_next_key_goes() {
        let (pad, _) = typed(TapeMarks::FeetInches, "42f7/4");
        let shown = |pad: &Keypad| {
            pad.slots()
                .into_iter()
                .map(|slot| (slot.typed, slot.active))
                .collect::<Vec<_>>()
        };
        let typed_as = |texts: [(&str, bool); 3]| texts.map(|(text, at)| (text.to_owned(), at));
        assert_eq!(
            shown(&pad),
            typed_as([("42", false), ("7", false), ("1/2", true)])
        );
        let (pad, _) = typed(TapeMarks::FeetInches, "42f7/4<<");
        assert_eq!(
            shown(&pad),
            typed_as([("42", false), ("", true), ("", false)])
        );
    }

    fn any_key() -> impl Strategy<Value = Key> {
        prop_oneof![
            (0_u8..10).prop_map(|digit| Key::Digit { digit }),
            Just(Key::Whole),
            Just(Key::Inches),
            (0_u8..8).prop_map(|eighths| Key::Eighths { eighths }),
            Just(Key::TakeBackOne),
        ]
    }

    fn any_tape() -> impl Strategy<Value = TapeMarks> {
        prop_oneof![
            Just(TapeMarks::FeetInches),
            Just(TapeMarks::FeetTenths),
            Just(TapeMarks::Meters)
        ]
    }

    proptest! {
        #[test]
        fn whatever_is_pressed_the_pad_comes_back_from_its_text_and_reads_back_the_same(
            tape in any_tape(),
            keys in prop::collection::vec(any_key(), 0..20),
        ) {
            let mut pad = Keypad::new(tape, FractionStep::Eighths);
            for key in keys {
                let before = pad.clone();
                match pad.press(key, None) {
                    Ok(()) => {}
                    Err(_) => prop_assert_eq!(&pad, &before),
                }
            }
            let text = serde_json::to_string(&pad).unwrap();
            prop_assert_eq!(&serde_json::from_str::<Keypad>(&text).unwrap(), &pad);
            if let Ok(reading) = pad.reading() {
                let tape = Tape::read(&reading).unwrap();
                prop_assert_eq!(tape.words(), reading);
            }
        }
    }
}

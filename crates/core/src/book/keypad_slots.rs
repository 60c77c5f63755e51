//! The slots of the keypad, and which key fits into which slot.

use super::key_refusal::KeyRefusal;
use super::keys::{FractionStep, Key};
use super::tape_marks::TapeMarks;
use serde::{Deserialize, Serialize};

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
    /// Whole meters.
    M,
    /// Centimeters.
    Cm,
}

/// The unit of a slot.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum SlotUnit {
    /// Feet.
    Feet,
    /// Inches.
    Inches,
    /// Tenths of a foot.
    Tenths,
    /// Meters.
    Meters,
    /// Centimeters.
    Centimeters,
}

/// One slot with its content.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct SlotState {
    /// Which slot.
    pub slot: Slot,
    /// What was typed into it.
    pub content: SlotContent,
    /// The unit shown with it; `None` for the fraction.
    pub unit: Option<SlotUnit>,
    /// The next digit goes into this slot.
    pub active: bool,
}

/// What was typed into a slot.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum SlotContent {
    /// Nothing.
    Empty,
    /// Digits as typed, leading zeros included.
    Digits(String),
    /// Eighths of an inch, 0 to 7.
    Eighths(u8),
}

/// The longest tape in common use, feet.
const LONGEST_TAPE_FT: u32 = 300;
/// The longest tape in common use, whole meters.
const LONGEST_TAPE_M: u32 = 91;
/// The most inches after whole feet.
const MOST_INCHES: u32 = 11;
/// The most digits in the slot for tenths of a foot or for centimeters.
const MOST_DECIMALS: usize = 2;

/// Slots as filled by the keys.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub(super) struct TypedSlots {
    whole: String,
    parts: String,
    eighths: Option<u8>,
    active: Active,
}

/// The slot into which the next key goes.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
enum Active {
    #[default]
    Whole,
    Parts,
    Fraction,
}

impl TypedSlots {
    /// Takes one key.
    ///
    /// # Errors
    /// Why the key does not fit. The slots are then not to be used further.
    pub(super) fn take(
        &mut self,
        key: Key,
        tape: TapeMarks,
        step: FractionStep,
    ) -> Result<(), KeyRefusal> {
        match key {
            Key::Digit { digit } => self.take_digit(digit, tape),
            Key::Whole => self.take_whole(tape),
            Key::Inches => self.take_inches(tape),
            Key::Eighths { eighths } => self.take_eighths(eighths, tape, step),
            Key::TakeBackOne | Key::BookIt => Err(KeyRefusal::NotATypingKey),
        }
    }

    /// Returns the slots of a tape in order.
    pub(super) fn slots(&self, tape: TapeMarks) -> Vec<SlotState> {
        let state = |slot, content, unit, active| SlotState {
            slot,
            content,
            unit,
            active: self.active == active,
        };
        let (whole_slot, parts_slot) = match tape {
            TapeMarks::FeetInches => (Slot::Ft, Slot::In),
            TapeMarks::FeetTenths => (Slot::Ft, Slot::Tenths),
            TapeMarks::Meters => (Slot::M, Slot::Cm),
        };
        let (whole_unit, parts_unit) = units(tape);
        let mut slots = vec![
            state(
                whole_slot,
                digits(&self.whole),
                Some(whole_unit),
                Active::Whole,
            ),
            state(
                parts_slot,
                digits(&self.parts),
                Some(parts_unit),
                Active::Parts,
            ),
        ];
        if tape == TapeMarks::FeetInches {
            let fraction = self
                .eighths
                .map_or(SlotContent::Empty, SlotContent::Eighths);
            slots.push(state(Slot::Fraction, fraction, None, Active::Fraction));
        }
        slots
    }

    /// Returns the typed length as tape text.
    ///
    /// # Errors
    /// `NoUnit` while the first slot is active.
    pub(super) fn tape_text(&self, tape: TapeMarks) -> Result<String, KeyRefusal> {
        let whole = &self.whole;
        if self.active == Active::Whole {
            return Err(KeyRefusal::NoUnit {
                typed: number(whole),
                unit: units(tape).0,
            });
        }
        let parts = if self.parts.is_empty() {
            "0"
        } else {
            &self.parts
        };
        Ok(match (tape, self.eighths.unwrap_or(0)) {
            (TapeMarks::FeetInches, 0) => format!("{whole} ft {parts} in"),
            (TapeMarks::FeetInches, eighths) => format!("{whole} ft {parts} {eighths}/8 in"),
            (TapeMarks::FeetTenths, _) => format!("{whole}.{parts} ft"),
            (TapeMarks::Meters, _) => format!("{whole}.{parts:0>2} m"),
        })
    }

    fn take_digit(&mut self, digit: u8, tape: TapeMarks) -> Result<(), KeyRefusal> {
        if digit > 9 {
            return Err(KeyRefusal::NotADigit { digit });
        }
        let (whole_unit, parts_unit) = units(tape);
        let (slot, unit) = match self.active {
            Active::Whole => (&mut self.whole, whole_unit),
            Active::Parts => (&mut self.parts, parts_unit),
            Active::Fraction => return Err(KeyRefusal::DigitAfterFraction),
        };
        if slot == "0" && unit != SlotUnit::Tenths {
            return Err(KeyRefusal::DigitAfterZero { unit });
        }
        let grown = format!("{slot}{digit}");
        let typed = number(&grown);
        match unit {
            SlotUnit::Feet if typed > LONGEST_TAPE_FT => {
                return Err(KeyRefusal::LongerThanTape { typed, unit });
            }
            SlotUnit::Meters if typed > LONGEST_TAPE_M => {
                return Err(KeyRefusal::LongerThanTape { typed, unit });
            }
            SlotUnit::Inches if typed > MOST_INCHES => {
                return Err(KeyRefusal::OverFoot { inches: typed });
            }
            SlotUnit::Tenths | SlotUnit::Centimeters if grown.len() > MOST_DECIMALS => {
                return Err(KeyRefusal::SlotFull { unit });
            }
            SlotUnit::Feet
            | SlotUnit::Inches
            | SlotUnit::Tenths
            | SlotUnit::Meters
            | SlotUnit::Centimeters => {}
        }
        *slot = grown;
        Ok(())
    }

    fn take_whole(&mut self, tape: TapeMarks) -> Result<(), KeyRefusal> {
        let (unit, _) = units(tape);
        match self.active {
            Active::Whole if self.whole.is_empty() => Err(KeyRefusal::NoNumberBefore { unit }),
            Active::Whole => {
                self.active = Active::Parts;
                Ok(())
            }
            Active::Parts | Active::Fraction => Err(KeyRefusal::UnitAlreadySet { unit }),
        }
    }

    /// Goes on to the fraction. A length under a foot can be typed as inches alone.
    fn take_inches(&mut self, tape: TapeMarks) -> Result<(), KeyRefusal> {
        if tape != TapeMarks::FeetInches {
            return Err(KeyRefusal::TapeWithoutInches);
        }
        let unit = SlotUnit::Inches;
        match self.active {
            Active::Whole if self.whole.is_empty() => {
                return Err(KeyRefusal::NoNumberBefore { unit });
            }
            Active::Whole => {
                let inches = number(&self.whole);
                if inches > MOST_INCHES {
                    return Err(KeyRefusal::OverFoot { inches });
                }
                self.parts = std::mem::replace(&mut self.whole, "0".to_owned());
            }
            Active::Parts => {}
            Active::Fraction => return Err(KeyRefusal::UnitAlreadySet { unit }),
        }
        self.active = Active::Fraction;
        Ok(())
    }

    fn take_eighths(
        &mut self,
        eighths: u8,
        tape: TapeMarks,
        step: FractionStep,
    ) -> Result<(), KeyRefusal> {
        if tape != TapeMarks::FeetInches {
            return Err(KeyRefusal::TapeWithoutInches);
        }
        if eighths > 7 {
            return Err(KeyRefusal::NotADigit { digit: eighths });
        }
        if self.active == Active::Whole {
            return Err(KeyRefusal::FractionBeforeFeet);
        }
        if step == FractionStep::Quarters && !eighths.is_multiple_of(2) {
            return Err(KeyRefusal::NotAQuarter { eighths });
        }
        self.eighths = Some(eighths);
        self.active = Active::Fraction;
        Ok(())
    }
}

/// Units of the first two slots.
fn units(tape: TapeMarks) -> (SlotUnit, SlotUnit) {
    match tape {
        TapeMarks::FeetInches => (SlotUnit::Feet, SlotUnit::Inches),
        TapeMarks::FeetTenths => (SlotUnit::Feet, SlotUnit::Tenths),
        TapeMarks::Meters => (SlotUnit::Meters, SlotUnit::Centimeters),
    }
}

fn digits(typed: &str) -> SlotContent {
    if typed.is_empty() {
        SlotContent::Empty
    } else {
        SlotContent::Digits(typed.to_owned())
    }
}

/// The number that typed digits make; 0 for none.
fn number(digits: &str) -> u32 {
    digits.parse().unwrap_or(0)
}

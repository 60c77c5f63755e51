//! The keypad: what the keys type, and why a key is refused.
#![allow(clippy::unwrap_used, reason = "a test fails by panicking")]

use eavebook_core::book::keypad::{
    FractionStep, Key, KeyRefusal, Keypad, Meant, SlotContent, SlotUnit,
};
use eavebook_core::book::kinds::TapeMarks;
use eavebook_core::units::Tape;
use proptest::prelude::*;

/// Keys by one character each: digits, `f` for ft or m, `i` for in, `<` to take back, `/4` for 4/8.
fn keys(text: &str) -> Vec<Key> {
    let mut characters = text.chars();
    let mut keys = Vec::new();
    while let Some(character) = characters.next() {
        keys.push(match character {
            'f' => Key::Whole,
            'i' => Key::Inches,
            '<' => Key::TakeBackOne,
            '/' => Key::Eighths {
                eighths: digit(characters.next().unwrap()),
            },
            character => Key::Digit {
                digit: digit(character),
            },
        });
    }
    keys
}

fn digit(character: char) -> u8 {
    u8::try_from(character.to_digit(10).unwrap()).unwrap()
}

/// A keypad after these keys, and the refusals on the way.
fn typed(tape: TapeMarks, text: &str) -> (Keypad, Vec<KeyRefusal>) {
    let mut pad = Keypad::new(tape, FractionStep::Eighths);
    let refusals = keys(text)
        .into_iter()
        .filter_map(|key| pad.press(key, None).err())
        .collect();
    (pad, refusals)
}

fn reading(tape: TapeMarks, text: &str) -> Result<String, KeyRefusal> {
    let (pad, refusals) = typed(tape, text);
    assert_eq!(refusals, []);
    pad.reading()
}

/// Contents of the slots, and which slot is active.
fn shown(pad: &Keypad) -> Vec<(SlotContent, bool)> {
    pad.slots()
        .into_iter()
        .map(|slot| (slot.content, slot.active))
        .collect()
}

#[test]
fn a_length_is_typed_slot_by_slot() {
    use TapeMarks::{FeetInches, FeetTenths, Meters};
    for (tape, keys, text) in [
        (FeetInches, "42f7/4", "42 ft 7 1/2 in"),
        (FeetInches, "42f7i/4", "42 ft 7 1/2 in"),
        (FeetInches, "40f", "40 ft"),
        (FeetInches, "42f/6", "42 ft 3/4 in"),
        (FeetInches, "42f7/0", "42 ft 7 in"),
        (FeetInches, "7i", "7 in"),
        (FeetInches, "0f7", "7 in"),
        (FeetTenths, "42f6", "42.6 ft"),
        (FeetTenths, "42f06", "42.06 ft"),
        (FeetTenths, "42f", "42 ft"),
        (Meters, "12f5", "12.05 m"),
        (Meters, "12f25", "12.25 m"),
    ] {
        assert_eq!(reading(tape, keys), Ok(text.to_owned()), "{keys}");
    }
}

#[test]
fn a_number_without_its_unit_is_refused() {
    let no_unit = |unit| Err(KeyRefusal::NoUnit { typed: 27, unit });
    assert_eq!(
        reading(TapeMarks::FeetInches, "27"),
        no_unit(SlotUnit::Feet)
    );
    assert_eq!(reading(TapeMarks::Meters, "27"), no_unit(SlotUnit::Meters));
    assert_eq!(
        reading(TapeMarks::FeetInches, ""),
        Err(KeyRefusal::NothingTyped)
    );
}

#[test]
fn a_length_of_zero_is_refused() {
    for keys in ["0f", "0f0/0"] {
        assert_eq!(reading(TapeMarks::FeetInches, keys), Err(KeyRefusal::Zero));
    }
}

#[test]
fn a_refused_key_names_its_reason_and_changes_nothing() {
    let feet = SlotUnit::Feet;
    for (keys, refusal, text) in [
        ("42f14", KeyRefusal::OverFoot { inches: 14 }, "42 ft 1 in"),
        ("42ff", KeyRefusal::UnitAlreadySet { unit: feet }, "42 ft"),
        (
            "400f",
            KeyRefusal::LongerThanTape {
                typed: 400,
                unit: feet,
            },
            "40 ft",
        ),
        ("04f7", KeyRefusal::DigitAfterZero { unit: feet }, "7 in"),
        ("f42f", KeyRefusal::NoNumberBefore { unit: feet }, "42 ft"),
        ("42i<2f", KeyRefusal::OverFoot { inches: 42 }, "42 ft"),
        ("/442f", KeyRefusal::FractionBeforeFeet, "42 ft"),
        ("42f7/43", KeyRefusal::DigitAfterFraction, "42 ft 7 1/2 in"),
        ("<42f", KeyRefusal::NothingTyped, "42 ft"),
    ] {
        let (pad, refusals) = typed(TapeMarks::FeetInches, keys);
        assert_eq!(
            (refusals, pad.reading()),
            (vec![refusal], Ok(text.to_owned())),
            "{keys}"
        );
    }
}

#[test]
fn inches_are_refused_on_a_tape_of_tenths() {
    let (_, refusals) = typed(TapeMarks::FeetTenths, "42f6i/4");
    assert_eq!(refusals, [KeyRefusal::TapeWithoutInches; 2]);
}

#[test]
fn a_third_decimal_is_refused() {
    let (_, refusals) = typed(TapeMarks::FeetTenths, "42f065");
    let unit = SlotUnit::Tenths;
    assert_eq!(refusals, [KeyRefusal::SlotFull { unit }]);
}

#[test]
fn an_odd_eighth_is_refused_on_a_keypad_of_quarters() {
    let mut pad = Keypad::new(TapeMarks::FeetInches, FractionStep::Quarters);
    for key in keys("42f") {
        pad.press(key, None).unwrap();
    }
    assert_eq!(
        pad.press(Key::Eighths { eighths: 3 }, None),
        Err(KeyRefusal::NotAQuarter { eighths: 3 })
    );
}

#[test]
fn a_fast_double_press_is_typed_and_one_answer_takes_it_back() {
    let two = Key::Digit { digit: 2 };
    let mut pad = Keypad::new(TapeMarks::FeetInches, FractionStep::Eighths);
    pad.press(two, None).unwrap();
    pad.press(two, Some(119)).unwrap();
    assert_eq!(pad.double(), Some(2));
    let mut after_unit = pad.clone();
    after_unit.press(Key::Whole, Some(400)).unwrap();
    assert_eq!(after_unit.double(), None);
    assert_eq!(after_unit.reading(), Ok("22 ft".to_owned()));
    let mut kept = pad.clone();
    kept.answer_double(Meant::Two);
    pad.answer_double(Meant::One);
    let digits = |text: &str| SlotContent::Digits(text.to_owned());
    assert_eq!(
        (&kept.slots()[0].content, &pad.slots()[0].content),
        (&digits("22"), &digits("2"))
    );
    pad.press(two, Some(120)).unwrap();
    assert_eq!(pad.double(), None);
}

#[test]
fn the_active_slot_takes_the_next_digit() {
    let digits = |text: &str| SlotContent::Digits(text.to_owned());
    let (pad, _) = typed(TapeMarks::FeetInches, "42f7/4");
    assert_eq!(
        shown(&pad),
        [
            (digits("42"), false),
            (digits("7"), false),
            (SlotContent::Eighths(4), true)
        ]
    );
    let (pad, _) = typed(TapeMarks::FeetInches, "42f7/4<<");
    assert_eq!(
        shown(&pad),
        [
            (digits("42"), false),
            (SlotContent::Empty, true),
            (SlotContent::Empty, false)
        ]
    );
}

#[test]
fn ten_fast_keys_are_kept_in_order() {
    let mut pad = Keypad::new(TapeMarks::FeetInches, FractionStep::Eighths);
    for key in keys("122f11<i/3/5") {
        pad.press(key, Some(100)).unwrap();
    }
    assert_eq!(pad.reading().unwrap(), "122 ft 1 5/8 in");
}

fn any_key() -> impl Strategy<Value = Key> {
    prop_oneof![
        6 => (0_u8..10).prop_map(|digit| Key::Digit { digit }),
        1 => (10_u8..).prop_map(|digit| Key::Digit { digit }),
        3 => Just(Key::Whole),
        2 => Just(Key::Inches),
        2 => (0_u8..10).prop_map(|eighths| Key::Eighths { eighths }),
        2 => Just(Key::TakeBackOne),
        1 => Just(Key::BookIt),
    ]
}

fn any_pad() -> impl Strategy<Value = Keypad> {
    use {FractionStep::*, TapeMarks::*};
    let tapes = prop::sample::select(vec![FeetInches, FeetTenths, Meters]);
    (tapes, prop::sample::select(vec![Eighths, Quarters]))
        .prop_map(|(tape, step)| Keypad::new(tape, step))
}

/// The digits in the first two slots, left to right.
fn digits(pad: &Keypad) -> String {
    pad.slots()
        .into_iter()
        .filter_map(|slot| match slot.content {
            SlotContent::Digits(digits) => Some(digits),
            SlotContent::Empty | SlotContent::Eighths(_) => None,
        })
        .collect()
}

proptest! {
    #[test]
    fn each_press_changes_what_is_shown_or_is_refused(
        mut pad in any_pad(),
        presses in prop::collection::vec((any_key(), prop::option::of(0_u32..300)), 0..40),
    ) {
        for (key, since_ms) in presses {
            let before = pad.clone();
            match pad.press(key, since_ms) {
                // The same fraction again shows the same.
                Ok(()) => prop_assert!(
                    shown(&pad) != shown(&before) || matches!(key, Key::Eighths { .. } | Key::TakeBackOne),
                    "{key:?}"
                ),
                Err(_) => prop_assert_eq!(&pad, &before),
            }
        }
    }

    #[test]
    fn a_stored_keypad_is_restored_and_its_reading_parses_to_itself(
        mut pad in any_pad(),
        keys in prop::collection::vec(any_key(), 0..20),
    ) {
        for key in keys {
            let _ = pad.press(key, None);
        }
        let text = serde_json::to_string(&pad).unwrap();
        prop_assert_eq!(&serde_json::from_str::<Keypad>(&text).unwrap(), &pad);
        if let Ok(reading) = pad.reading() {
            prop_assert_eq!(Tape::read(&reading).unwrap().canonical(), reading);
        }
    }

    /// Oracle: a plain list of the accepted keys.
    #[test]
    fn digits_are_shown_in_the_order_pressed(
        mut pad in any_pad(),
        keys in prop::collection::vec(any_key(), 0..40),
    ) {
        let mut taken: Vec<Key> = Vec::new();
        for key in keys {
            if pad.press(key, None).is_ok() {
                match key {
                    Key::TakeBackOne => drop(taken.pop()),
                    Key::Digit { .. } | Key::Whole | Key::Inches | Key::Eighths { .. }
                    | Key::BookIt => taken.push(key),
                }
            }
            let mut pressed: String = taken
                .iter()
                .filter_map(|key| match key {
                    Key::Digit { digit } => Some(char::from(b'0' + digit)),
                    Key::Whole | Key::Inches | Key::Eighths { .. } | Key::TakeBackOne
                    | Key::BookIt => None,
                })
                .collect();
            // Inches alone: the feet are filled in.
            if taken.contains(&Key::Inches) && !taken.contains(&Key::Whole) {
                pressed.insert(0, '0');
            }
            prop_assert_eq!(digits(&pad), pressed);
        }
    }

    #[test]
    fn taking_back_restores_the_slots_before_the_last_key(
        mut pad in any_pad(),
        keys in prop::collection::vec(any_key(), 0..30),
    ) {
        let mut past = vec![shown(&pad)];
        for key in keys {
            if key != Key::TakeBackOne && pad.press(key, None).is_ok() {
                past.push(shown(&pad));
            }
        }
        while past.len() > 1 {
            past.pop();
            pad.press(Key::TakeBackOne, None).unwrap();
            prop_assert_eq!(&shown(&pad), past.last().unwrap());
        }
        prop_assert_eq!(pad.press(Key::TakeBackOne, None), Err(KeyRefusal::NothingTyped));
    }

    #[test]
    fn the_double_press_question_blocks_no_key(
        mut fast in any_pad(),
        keys in prop::collection::vec(any_key(), 0..30),
    ) {
        let mut slow = fast.clone();
        for key in keys {
            let pressed = fast.press(key, Some(100));
            prop_assert_eq!(&pressed, &slow.press(key, None));
            prop_assert_eq!(shown(&fast), shown(&slow));
            prop_assert_eq!(fast.reading(), slow.reading());
            let asked = fast.double();
            let mut two = fast.clone();
            two.answer_double(Meant::Two);
            prop_assert_eq!((two.double(), shown(&two)), (None, shown(&fast)));
            // A refused key leaves the question open.
            if let (Some(digit), Ok(())) = (asked, pressed) {
                prop_assert_eq!(key, Key::Digit { digit });
                let mut one = fast.clone();
                one.answer_double(Meant::One);
                slow.press(Key::TakeBackOne, None).unwrap();
                prop_assert_eq!(shown(&one), shown(&slow));
                slow.press(key, None).unwrap();
            }
        }
    }

    #[test]
    fn a_typed_reading_is_above_zero_and_at_most_a_tape_long(
        mut pad in any_pad(),
        keys in prop::collection::vec(any_key(), 0..30),
    ) {
        for key in keys {
            let _ = pad.press(key, None);
        }
        if let Ok(text) = pad.reading() {
            let feet = Tape::read(&text).unwrap().length().in_feet();
            // 91 m 99 cm is 301.8 ft.
            prop_assert!(feet > 0.0 && feet < 302.0, "{}", text);
        }
    }
}

//! Whatever is pressed on the keypad, no key is lost in silence.
#![allow(clippy::unwrap_used, reason = "a test fails by panicking")]

use eavebook_core::book::keypad::{FractionStep, Key, KeyRefusal, Keypad, Meant};
use eavebook_core::book::kinds::TapeMarks;
use eavebook_core::units::Tape;
use proptest::prelude::*;

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

/// All that a person sees of a keypad.
fn seen(pad: &Keypad) -> Vec<(String, bool)> {
    pad.slots()
        .into_iter()
        .map(|slot| (slot.typed, slot.active))
        .collect()
}

/// Digits in the slots from left to right; what the fraction keys wrote is apart.
fn digits(pad: &Keypad) -> String {
    pad.slots()
        .into_iter()
        .take(2)
        .map(|slot| slot.typed)
        .collect()
}

proptest! {
    #[test]
    fn each_press_changes_what_is_seen_or_says_why_not_in_a_sentence(
        mut pad in any_pad(),
        presses in prop::collection::vec((any_key(), prop::option::of(0_u32..300)), 0..40),
    ) {
        for (key, since_ms) in presses {
            let before = pad.clone();
            match pad.press(key, since_ms) {
                // A fraction pressed again, or one back at what stood before, looks the same.
                Ok(()) => prop_assert!(
                    seen(&pad) != seen(&before) || matches!(key, Key::Eighths { .. } | Key::TakeBackOne),
                    "{key:?}"
                ),
                Err(why) => {
                    prop_assert_eq!(&pad, &before);
                    let said = why.to_string();
                    prop_assert!(said.ends_with(['.', '?']) && !said.contains('{'), "{}", said);
                    prop_assert!(why.code().bytes().all(|b| b.is_ascii_lowercase() || b == b'_'));
                }
            }
        }
    }

    /// Against a plain list: digits taken stand in the slots in the order in which they came.
    #[test]
    fn digits_stand_in_the_order_in_which_they_were_pressed(
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
    fn taking_back_undoes_exactly_the_last_key_taken(
        mut pad in any_pad(),
        keys in prop::collection::vec(any_key(), 0..30),
    ) {
        let mut past = vec![seen(&pad)];
        for key in keys {
            if key != Key::TakeBackOne && pad.press(key, None).is_ok() {
                past.push(seen(&pad));
            }
        }
        while past.len() > 1 {
            past.pop();
            pad.press(Key::TakeBackOne, None).unwrap();
            prop_assert_eq!(&seen(&pad), past.last().unwrap());
        }
        prop_assert_eq!(pad.press(Key::TakeBackOne, None), Err(KeyRefusal::NothingTyped));
    }

    /// Fast or slow, asked about or not, the same keys type the same.
    #[test]
    fn a_question_about_a_bounce_never_stands_in_the_way(
        mut fast in any_pad(),
        keys in prop::collection::vec(any_key(), 0..30),
    ) {
        let mut slow = fast.clone();
        for key in keys {
            let pressed = fast.press(key, Some(100));
            prop_assert_eq!(&pressed, &slow.press(key, None));
            prop_assert_eq!(seen(&fast), seen(&slow));
            prop_assert_eq!(fast.reading(), slow.reading());
            let asked = fast.double();
            let mut two = fast.clone();
            two.answer_double(Meant::Two);
            prop_assert_eq!((two.double(), seen(&two)), (None, seen(&fast)));
            // A question outlives a refused key: what was asked about still stands.
            if let (Some(digit), Ok(())) = (asked, pressed) {
                prop_assert_eq!(key, Key::Digit { digit });
                let mut one = fast.clone();
                one.answer_double(Meant::One);
                slow.press(Key::TakeBackOne, None).unwrap();
                prop_assert_eq!(seen(&one), seen(&slow));
                slow.press(key, None).unwrap();
            }
        }
    }

    #[test]
    fn what_can_be_booked_is_a_length_of_a_house(
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

#[test]
fn ten_fast_keys_are_kept_in_order() {
    let mut pad = Keypad::new(TapeMarks::FeetInches, FractionStep::Eighths);
    let digit = |digit| Key::Digit { digit };
    let back = Key::TakeBackOne;
    let keys = [
        digit(1),
        digit(2),
        digit(2),
        Key::Whole,
        digit(1),
        digit(1),
        back,
        Key::Inches,
        Key::Eighths { eighths: 3 },
        Key::Eighths { eighths: 5 },
    ];
    for key in keys {
        pad.press(key, Some(100)).unwrap();
    }
    assert_eq!(pad.reading().unwrap(), "122 ft 1 5/8 in");
}

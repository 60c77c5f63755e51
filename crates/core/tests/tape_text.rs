//! Tape text to length and back, in every spelling that people write.
#![allow(clippy::unwrap_used, reason = "a test fails by panicking")]

use eavebook_core::units::{Length, RoundTo, Tape, TapeError};
use proptest::prelude::*;

fn canonical(text: &str) -> String {
    Tape::read(text).unwrap().canonical()
}

fn error(text: &str) -> TapeError {
    Tape::read(text).unwrap_err().error
}

fn listed() -> serde_json::Value {
    serde_json::from_str(include_str!("data/tape.json")).unwrap()
}

#[test]
fn every_listed_spelling_parses_to_its_listed_length() {
    let listed = listed();
    for pair in listed["good"].as_array().unwrap() {
        let (text, feet) = (pair[0].as_str().unwrap(), pair[1].as_f64().unwrap());
        let read = Tape::read(text).unwrap().length().in_feet();
        assert!((read - feet).abs() < 5e-7, "{text}: {read}");
    }
}

#[test]
fn every_listed_bad_text_is_refused() {
    let listed = listed();
    for text in listed["bad"].as_array().unwrap() {
        let text = text.as_str().unwrap();
        let refused = Tape::read(text).err();
        let kept: String = text.chars().take(100).collect();
        assert_eq!(refused.map(|refusal| refusal.text), Some(kept));
    }
}

#[test]
fn every_spelling_has_one_canonical_form() {
    assert_eq!(canonical("42'-7 4/8\""), "42 ft 7 1/2 in");
    assert_eq!(canonical("40'0\""), "40 ft");
    assert_eq!(canonical("040.30 FT."), "40.3 ft");
    assert_eq!(canonical("40.0'"), "40 ft");
    assert_eq!(canonical("0' 6\""), "6 in");
    assert_eq!(canonical("½\""), "1/2 in");
    assert_eq!(canonical("38' ½\""), "38 ft 1/2 in");
    assert_eq!(canonical("38 ft 4.50 in"), "38 ft 4.5 in");
    assert_eq!(canonical("460.50 in"), "460.5 in");
    assert_eq!(canonical("12 m 5 cm"), "12.05 m");
    assert_eq!(canonical("1225.0 cm"), "1225 cm");
    assert_eq!(canonical("12250mm"), "12250 mm");
}

#[test]
fn feet_and_a_fraction_of_ten_digits_are_over_the_longest_length() {
    // Found by fuzzing: feet times parts of an inch overflowed 64 bits.
    assert_eq!(error("1382222444'4-1/2442222222\""), TapeError::OverLongest);
    // Just over 2^64 parts: a silent overflow would give a sixth of an inch.
    assert_eq!(
        error("2863311530' 8-1/2147483648\""),
        TapeError::OverLongest
    );
}

#[test]
fn the_text_is_kept_as_written() {
    let tape = Tape::read(" 38’-4 2/4” ").unwrap();
    assert_eq!(tape.text(), " 38’-4 2/4” ");
    assert_eq!(tape.canonical(), "38 ft 4 1/2 in");
}

#[test]
fn each_bad_text_has_its_own_error() {
    use TapeError::*;
    let number = |text: &str| text.parse().unwrap();
    for (text, expected) in [
        ("  ", Empty),
        ("ft", NoNumber),
        ("427", NoUnit),
        ("38 4\"", NoUnit),
        ("38 yd", UnknownWord { word: "yd".into() }),
        ("-38'", Negative),
        ("38' -4\"", Negative),
        (
            "38' 14\"",
            InchesOverEleven {
                inches: number("14"),
            },
        ),
        (
            "38' 12.50\"",
            InchesOverEleven {
                inches: number("12.5"),
            },
        ),
        (
            "11 m 100 cm",
            CentimetersOver99 {
                centimeters: number("100"),
            },
        ),
        (
            "38' 4 9/8\"",
            FractionNotUnderOne {
                numerator: 9,
                denominator: 8,
            },
        ),
        (
            "4 1/0\"",
            FractionNotUnderOne {
                numerator: 1,
                denominator: 0,
            },
        ),
        ("38 1/2 ft", FractionOfOtherUnit),
        ("38.5' 4\"", DecimalFeetWithInches),
        ("4.5 1/2\"", DecimalWithFraction),
        ("4\" 38'", InchesBeforeFeet),
        ("38 ft 4 m", NotOneLength),
        ("38-4-2", NotOneLength),
        ("38..4 ft", PointWithoutDigit),
        (".5 ft", PointWithoutDigit),
        ("1,200 ft", Comma),
        ("38' 4½½\"", NotOneLength),
        ("0'", Zero),
        ("10001 ft", OverLongest),
        ("38.1111111111111111111111111111111 ft", TooManyDigits),
        ("38'\n4\"", UnknownCharacter { character: '\n' }),
        ("38' 4\" x", UnknownWord { word: "x".into() }),
        ("99999999999999999999 ft", OverLongest),
        ("38-", NoNumber),
        ("½", NoUnit),
        (
            "a text that goes on and on and on, far beyond what anybody could read off a tape",
            TooLong,
        ),
    ] {
        assert_eq!(error(text), expected, "{text}");
    }
}

/// Any reading, in canonical or near-canonical text.
fn readings() -> impl Strategy<Value = String> {
    let fraction = prop_oneof![
        Just(String::new()),
        (1_u32..6)
            .prop_flat_map(|power| (1..(1_u32 << power), Just(1_u32 << power)))
            .prop_map(|(above, below)| format!(" {above}/{below}")),
    ];
    prop_oneof![
        (0_u32..9999, 0_u32..12, fraction).prop_map(|(f, i, part)| format!("{f}' {i}{part}\"")),
        (0_u32..9999, 0_u32..12, 0_u32..1000).prop_map(|(f, i, d)| format!("{f} ft {i}.{d} in")),
        (0_u32..9999, 0_u64..10_000_000_000).prop_map(|(f, d)| format!("{f}.{d} ft")),
        (0_u32..119_999, 0_u32..1000).prop_map(|(i, d)| format!("{i}.{d} in")),
        (0_u32..3000, 0_u32..10_000).prop_map(|(m, d)| format!("{m}.{d} m")),
        (0_u32..3000, 0_u32..100).prop_map(|(m, c)| format!("{m} m {c} cm")),
        (1_u32..300_000).prop_map(|c| format!("{c} cm")),
        (1_u32..3_000_000).prop_map(|m| format!("{m} mm")),
    ]
    .prop_filter("0 is not a reading", |text| Tape::read(text).is_ok())
}

proptest! {
    #[test]
    fn a_thousand_round_trips_leave_the_length_unchanged(text in readings()) {
        let first = Tape::read(&text).unwrap();
        let mut tape = Tape::read(&first.canonical()).unwrap();
        for _ in 0..1000 {
            tape = Tape::read(&tape.canonical()).unwrap();
        }
        prop_assert_eq!(tape.canonical(), first.canonical());
        prop_assert_eq!(tape.length().in_feet().to_bits(), first.length().in_feet().to_bits());
    }

    #[test]
    fn blanks_capitals_and_curly_marks_leave_the_reading_unchanged(text in readings()) {
        let other = text.to_uppercase().replace('\'', "’").replace('"', "″").replace(' ', "\u{a0} ");
        prop_assert_eq!(Tape::read(&other).unwrap().canonical(), Tape::read(&text).unwrap().canonical());
    }

    #[test]
    fn feet_as_text_parse_back_to_the_same_bits(feet in 1e-3_f64..10_000.0) {
        let back = Tape::read(&format!("{feet} ft")).unwrap().length().in_feet();
        prop_assert_eq!(back.to_bits(), feet.to_bits());
    }

    #[test]
    fn a_rounded_length_is_within_half_a_step(feet in 0.05_f64..10_000.0) {
        let length = Length::feet(feet);
        for (to, half_step) in [
            (RoundTo::Inch, 0.5 / 12.0),
            (RoundTo::EighthInch, 0.5 / 96.0),
            (RoundTo::TenthFoot, 0.05),
            (RoundTo::HundredthFoot, 0.005),
            (RoundTo::Centimeter, 0.005 / 0.3048),
        ] {
            let back = Tape::rounded(length, to).length().in_feet();
            prop_assert!((back - feet).abs() <= half_step + 1e-9);
        }
    }

    #[test]
    fn any_text_is_parsed_or_refused_with_that_text(text in "\\PC*|[0-9' \"/.½ftinmc-]{0,20}") {
        if let Err(refusal) = Tape::read(&text) {
            prop_assert!(text.starts_with(&refusal.text));
        }
    }
}

//! Tape text to length and back, in every spelling that people write.
#![allow(clippy::unwrap_used, reason = "a test fails by panicking")]

use eavebook_core::units::{Length, RoundTo, Tape, Tongue, degrees_spoken};
use proptest::prelude::*;

fn words(text: &str) -> String {
    Tape::read(text).unwrap().words()
}

fn spoken(text: &str) -> String {
    Tape::read(text).unwrap().spoken(Tongue::English)
}

fn dicho(text: &str) -> String {
    Tape::read(text).unwrap().spoken(Tongue::Spanish)
}

fn refusal(text: &str) -> String {
    Tape::read(text).unwrap_err().to_string()
}

fn listed() -> serde_json::Value {
    serde_json::from_str(include_str!("data/tape.json")).unwrap()
}

#[test]
fn every_listed_spelling_is_the_length_beside_it() {
    let listed = listed();
    for pair in listed["good"].as_array().unwrap() {
        let (text, feet) = (pair[0].as_str().unwrap(), pair[1].as_f64().unwrap());
        let read = Tape::read(text).unwrap().length().in_feet();
        assert!((read - feet).abs() < 5e-7, "{text}: {read}");
    }
}

#[test]
fn every_listed_text_that_is_no_length_is_refused_with_its_text_and_no_line_break() {
    let listed = listed();
    for text in listed["bad"].as_array().unwrap() {
        let said = refusal(text.as_str().unwrap());
        assert!(said.starts_with('"') && said.contains(": "), "{said}");
        assert!(!said.contains('\n') && said.chars().count() < 300, "{said}");
    }
}

#[test]
fn a_reading_is_said_in_one_form() {
    assert_eq!(words("42'-7 4/8\""), "42 ft 7 1/2 in");
    assert_eq!(words("40'0\""), "40 ft");
    assert_eq!(words("040.30 FT."), "40.3 ft");
    assert_eq!(words("40.0'"), "40 ft");
    assert_eq!(words("0' 6\""), "6 in");
    assert_eq!(words("½\""), "1/2 in");
    assert_eq!(words("38' ½\""), "38 ft 1/2 in");
    assert_eq!(words("38 ft 4.50 in"), "38 ft 4.5 in");
    assert_eq!(words("460.50 in"), "460.5 in");
    assert_eq!(words("12 m 5 cm"), "12.05 m");
    assert_eq!(words("1225.0 cm"), "1225 cm");
    assert_eq!(words("12250mm"), "12250 mm");
}

#[test]
fn feet_and_a_fraction_of_ten_digits_are_too_long_and_no_other_length() {
    // Found by fuzzing: feet times the parts of an inch ran over what 64 bits hold.
    let said = refusal("1382222444'4-1/2442222222\"");
    assert!(said.contains("more than 10,000 ft"), "{said}");
    // 2^64 parts and a little: one that runs over in silence would be a sixth of an inch.
    refusal("2863311530' 8-1/2147483648\"");
}

#[test]
fn the_text_as_read_stays_beside_the_reading() {
    let tape = Tape::read(" 38’-4 2/4” ").unwrap();
    assert_eq!(tape.text(), " 38’-4 2/4” ");
    assert_eq!(tape.words(), "38 ft 4 1/2 in");
}

#[test]
fn a_reading_is_spoken_digit_by_digit_in_spanish_too() {
    assert_eq!(
        dicho("42' 7 1/2\""),
        "cuatro dos pies, siete pulgadas y media"
    );
    assert_eq!(dicho("40'"), "cuatro cero pies");
    assert_eq!(dicho("1' 1\""), "un pie, una pulgada");
    assert_eq!(
        dicho("38' 11 15/16\""),
        "tres ocho pies, uno uno pulgadas y uno cinco dieciseisavos"
    );
    assert_eq!(dicho("1/2\""), "media pulgada");
    assert_eq!(dicho("3' 1/8\""), "tres pies, un octavo de pulgada");
    assert_eq!(dicho("1 1/4\""), "una pulgada y un cuarto");
    assert_eq!(dicho("5 2/3\""), "cinco pulgadas y dos sobre tres");
    assert_eq!(dicho("40.3 ft"), "cuatro cero punto tres pies");
    assert_eq!(dicho("12.25 m"), "uno dos punto dos cinco metros");
    assert_eq!(dicho("1 cm"), "un centímetro");
}

#[test]
fn a_slope_is_spoken_digit_by_digit_to_the_tenth() {
    assert_eq!(
        degrees_spoken(26.57, Tongue::English),
        "two six point six degrees"
    );
    assert_eq!(
        degrees_spoken(26.57, Tongue::Spanish),
        "dos seis punto seis grados"
    );
}

#[test]
fn a_reading_is_spoken_digit_by_digit() {
    assert_eq!(
        spoken("42' 7 1/2\""),
        "four two feet, seven and a half inches"
    );
    assert_eq!(spoken("40'"), "four zero feet");
    assert_eq!(spoken("1' 1\""), "one foot, one inch");
    assert_eq!(
        spoken("38' 11 15/16\""),
        "three eight feet, one one and one five sixteenths inches"
    );
    assert_eq!(spoken("1/2\""), "half an inch");
    assert_eq!(spoken("3' 1/8\""), "three feet, an eighth of an inch");
    assert_eq!(spoken("5 2/3\""), "five and two over three inches");
    assert_eq!(spoken("40.3 ft"), "four zero point three feet");
    assert_eq!(spoken("12.25 m"), "one two point two five metres");
    assert_eq!(spoken("1 cm"), "one centimetre");
}

#[test]
fn a_text_that_is_no_reading_is_told_what_is_wrong_and_what_to_write() {
    let said: Vec<String> = [
        "  ",
        "ft",
        "427",
        "38 4\"",
        "38 yd",
        "-38'",
        "38' -4\"",
        "38' 14\"",
        "38' 12.5\"",
        "11 m 100 cm",
        "38' 4 9/8\"",
        "4 1/0\"",
        "38 1/2 ft",
        "38.5' 4\"",
        "4.5 1/2\"",
        "4\" 38'",
        "38 ft 4 m",
        "38-4-2",
        "38..4 ft",
        ".5 ft",
        "1,200 ft",
        "38' 4½½\"",
        "0'",
        "10001 ft",
        "38.1111111111111111111111111111111 ft",
        "38'\n4\"",
        "38' 4\" x",
        "99999999999999999999 ft",
        "38-",
        "½",
        "a text that goes on and on and on, far beyond what anybody could read off a tape",
    ]
    .map(refusal)
    .into();
    insta::assert_snapshot!(said.join("\n"));
}

/// Anything a tape can say, in its plainest words.
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
    .prop_filter("nothing is no reading", |text| Tape::read(text).is_ok())
}

proptest! {
    #[test]
    fn a_thousand_round_trips_move_nothing(text in readings()) {
        let first = Tape::read(&text).unwrap();
        let mut tape = Tape::read(&first.words()).unwrap();
        for _ in 0..1000 {
            tape = Tape::read(&tape.words()).unwrap();
        }
        prop_assert_eq!(tape.words(), first.words());
        prop_assert_eq!(tape.length().in_feet().to_bits(), first.length().in_feet().to_bits());
    }

    #[test]
    fn blanks_capitals_and_curly_marks_change_nothing(text in readings()) {
        let other = text.to_uppercase().replace('\'', "’").replace('"', "″").replace(' ', "\u{a0} ");
        prop_assert_eq!(Tape::read(&other).unwrap().words(), Tape::read(&text).unwrap().words());
    }

    #[test]
    fn a_number_of_feet_written_out_comes_back_to_the_bit(feet in 1e-3_f64..10_000.0) {
        let back = Tape::read(&format!("{feet} ft")).unwrap().length().in_feet();
        prop_assert_eq!(back.to_bits(), feet.to_bits());
    }

    #[test]
    fn rounded_words_are_within_half_a_step(feet in 0.05_f64..10_000.0) {
        let length = Length::feet(feet);
        for (to, half_step) in [
            (RoundTo::Inch, 0.5 / 12.0),
            (RoundTo::EighthInch, 0.5 / 96.0),
            (RoundTo::TenthFoot, 0.05),
            (RoundTo::HundredthFoot, 0.005),
            (RoundTo::Centimeter, 0.005 / 0.3048),
        ] {
            let back = Tape::read(&length.words(to)).unwrap().length().in_feet();
            prop_assert!((back - feet).abs() <= half_step + 1e-9);
        }
    }

    #[test]
    fn any_text_is_read_or_refused_in_one_short_line(text in "\\PC*|[0-9' \"/.½ftinmc-]{0,20}") {
        if let Err(refusal) = Tape::read(&text) {
            let said = refusal.to_string();
            prop_assert!(said.chars().count() <= 300 && !said.contains('\n'));
        }
    }
}

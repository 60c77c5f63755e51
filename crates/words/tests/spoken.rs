//! Readings and angles as they are spoken back.
#![allow(clippy::unwrap_used, reason = "a test fails by panicking")]

use eavebook_core::units::Tape;
use eavebook_words::{En, Es, Format};

fn en(text: &str) -> String {
    En.spoken(&Tape::read(text).unwrap())
}

fn es(text: &str) -> String {
    Es.spoken(&Tape::read(text).unwrap())
}

#[test]
fn a_reading_is_spoken_digit_by_digit_in_spanish() {
    assert_eq!(es("42' 7 1/2\""), "cuatro dos pies, siete pulgadas y media");
    assert_eq!(es("40'"), "cuatro cero pies");
    assert_eq!(es("1' 1\""), "un pie, una pulgada");
    assert_eq!(
        es("38' 11 15/16\""),
        "tres ocho pies, uno uno pulgadas y uno cinco dieciseisavos"
    );
    assert_eq!(es("1/2\""), "media pulgada");
    assert_eq!(es("3' 1/8\""), "tres pies, un octavo de pulgada");
    assert_eq!(es("1 1/4\""), "una pulgada y un cuarto");
    assert_eq!(es("5 2/3\""), "cinco pulgadas y dos sobre tres");
    assert_eq!(es("40.3 ft"), "cuatro cero punto tres pies");
    assert_eq!(es("12.25 m"), "uno dos punto dos cinco metros");
    assert_eq!(es("1 cm"), "un centímetro");
}

#[test]
fn an_angle_is_spoken_digit_by_digit_to_the_tenth() {
    assert_eq!(En.spoken_degrees(26.57), "two six point six degrees");
    assert_eq!(Es.spoken_degrees(26.57), "dos seis punto seis grados");
}

#[test]
fn a_reading_is_spoken_digit_by_digit_in_english() {
    assert_eq!(en("42' 7 1/2\""), "four two feet, seven and a half inches");
    assert_eq!(en("40'"), "four zero feet");
    assert_eq!(en("1' 1\""), "one foot, one inch");
    assert_eq!(
        en("38' 11 15/16\""),
        "three eight feet, one one and one five sixteenths inches"
    );
    assert_eq!(en("1/2\""), "half an inch");
    assert_eq!(en("3' 1/8\""), "three feet, an eighth of an inch");
    assert_eq!(en("5 2/3\""), "five and two over three inches");
    assert_eq!(en("40.3 ft"), "four zero point three feet");
    assert_eq!(en("12.25 m"), "one two point two five meters");
    assert_eq!(en("1 cm"), "one centimeter");
}

//! What holds of any bytes whatever: asked of mutated inputs by the plain tests, and of what a
//! fuzzer finds.

mod roof;

pub use roof::{drains, no_more_than_alone, of_bodies, of_roof, whole};

use eavebook_core::settings::{Blanks, Code, Rates};
use eavebook_core::survey_file::{self, Refusal};
use eavebook_core::units::Tape;

/// Tape text is refused in one short line, or its words are the same reading.
///
/// # Panics
/// Where that does not hold.
pub fn of_tape_text(text: &str) {
    match Tape::read(text) {
        Err(refusal) => assert_one_line(&refusal.to_string()),
        Ok(tape) => {
            assert!(tape.length().is_a_reading(), "{text:?}");
            let canonical = tape.canonical();
            let again = Tape::read(&canonical).expect("canonical text is a reading");
            assert_eq!(again.canonical(), canonical);
            assert_eq!(
                again.length().in_feet().to_bits(),
                tape.length().in_feet().to_bits(),
                "{text:?} parses back as {canonical:?}"
            );
        }
    }
}

/// A survey file is refused in one short line, or another reader takes it for JSON too.
///
/// # Panics
/// Where that does not hold.
pub fn of_survey_file(bytes: &[u8]) {
    match survey_file::read(bytes) {
        Err(refusal) => assert_one_line(&refusal.to_string()),
        Ok(file) => {
            let bytes = bytes.strip_prefix(b"\xef\xbb\xbf").unwrap_or(bytes);
            let other = serde_json::from_slice::<serde_json::Value>(bytes);
            assert!(other.is_ok(), "{}", String::from_utf8_lossy(bytes));
            assert!(!file.survey.bodies.is_empty());
        }
    }
}

/// Rates and code profile as TOML are refused in one short line, or read again from what they write.
///
/// # Panics
/// Where that does not hold.
pub fn of_settings(text: &str) {
    match Rates::from_toml(text, Blanks::Kept) {
        Err(fault) => assert_one_line(&fault.to_string()),
        Ok(rates) => {
            let table = rates.to_value();
            let again = Rates::read(table.as_object().expect("a table"), Blanks::Kept);
            assert_eq!(again, Ok(rates));
        }
    }
    match Code::from_toml(text) {
        Err(fault) => assert_one_line(&fault.to_string()),
        Ok(code) => {
            let table = code.to_value();
            assert_eq!(Code::read(table.as_object().expect("a table")), Ok(code));
        }
    }
    // The same text as one key of sound rates.
    for key in [
        "field.price",
        "labour.steepness",
        "field.pool",
        "boots.pipe.9",
    ] {
        if let Err(fault) = Rates::demo().with(key, text) {
            assert_one_line(&fault.to_string());
        }
    }
}

fn assert_one_line(said: &str) {
    assert!(said.chars().count() <= Refusal::LONGEST, "{said}");
    assert!(!said.chars().any(char::is_control), "{said:?}");
}

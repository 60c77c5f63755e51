//! Any bytes as a survey file.
#![no_main]

#[path = "../../../crates/core/tests/laws/mod.rs"]
#[allow(dead_code, unused_imports, reason = "each target asks one of the laws")]
mod laws;

libfuzzer_sys::fuzz_target!(|bytes: &[u8]| laws::of_survey_file(bytes));

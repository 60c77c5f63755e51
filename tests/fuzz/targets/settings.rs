//! Any text as rates, as a code profile, and as one key of rates.
#![no_main]

#[path = "../../../crates/core/tests/laws/mod.rs"]
#[allow(dead_code, unused_imports, reason = "each target asks one of the laws")]
mod laws;

libfuzzer_sys::fuzz_target!(|text: &str| laws::of_settings(text));

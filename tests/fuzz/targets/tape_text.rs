//! Any bytes as tape text.
#![no_main]

#[path = "../../../crates/core/tests/laws/mod.rs"]
#[allow(dead_code, unused_imports, reason = "each target asks one of the laws")]
mod laws;

libfuzzer_sys::fuzz_target!(|text: &str| laws::of_tape_text(text));

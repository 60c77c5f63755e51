//! Any bytes as one or two outlines with what rises at their legs.
#![no_main]

#[path = "../../../crates/core/tests/laws/mod.rs"]
#[allow(dead_code, unused_imports, reason = "each target asks one of the laws")]
mod laws;

libfuzzer_sys::fuzz_target!(|bytes: &[u8]| drop(laws::of_roof(bytes)));

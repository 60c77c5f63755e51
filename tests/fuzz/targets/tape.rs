//! Tape text: whatever is read, its words read back as the same reading; whatever is refused, the
//! refusal is one sentence.
#![no_main]

use eavebook_core::units::Tape;
use libfuzzer_sys::fuzz_target;

fuzz_target!(|text: &str| {
    match Tape::read(text) {
        Ok(tape) => {
            let again = Tape::read(&tape.words()).expect("the words of a reading are a reading");
            assert_eq!(again.words(), tape.words());
            assert_eq!(again.length(), tape.length());
        }
        Err(refusal) => assert!(!refusal.to_string().contains('\n')),
    }
});

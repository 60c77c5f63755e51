//! An entry as it comes from elsewhere: what is taken is written again and taken again, the same.
#![no_main]

use eavebook_core::book::entry::Entry;
use libfuzzer_sys::fuzz_target;

fuzz_target!(|text: &str| {
    if let Ok(entry) = Entry::from_json(text) {
        let again = Entry::from_json(&entry.to_json()).expect("an entry that was written is one");
        assert_eq!(again, entry);
    }
});

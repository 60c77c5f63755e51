//! Any bytes as a packet: it is refused in one sentence, or is what its id says.
#![no_main]

use eavebook_packet::check_reader;
use std::io::Cursor;

libfuzzer_sys::fuzz_target!(|bytes: &[u8]| {
    match check_reader(Cursor::new(bytes)) {
        Ok(proved) => assert_eq!(proved.id.len(), 64),
        Err(refused) => {
            let said = refused.to_string();
            assert!(!said.contains('\n') && said.len() < 1000, "{said}");
        }
    }
});

//! JSON packed on its way, with zstd.

use std::io::Read;

/// Below this packing costs more than it saves.
const WORTH: usize = 1024;
/// The largest answer in JSON, unpacked: a page of the feed is far below it.
const LARGEST: u64 = 8 << 20;
/// Largest window, as a power of two: 8 MiB of memory.
const WINDOW_LOG: u32 = 23;

/// Packed, where it is worth it.
pub(crate) fn pack(bytes: &[u8]) -> Option<Vec<u8>> {
    (bytes.len() >= WORTH).then(|| zstd::stream::encode_all(bytes, 1).ok())?
}

/// Unpacked; `None` for what is no whole zstd, or would be larger than any answer.
pub(crate) fn unpack(packed: &[u8]) -> Option<Vec<u8>> {
    let mut bytes = Vec::new();
    let mut from = zstd::stream::read::Decoder::new(packed).ok()?;
    from.window_log_max(WINDOW_LOG).ok()?;
    from.take(LARGEST + 1).read_to_end(&mut bytes).ok()?;
    (bytes.len() as u64 <= LARGEST).then_some(bytes)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_is_packed_comes_back_and_a_bomb_does_not() {
        assert_eq!(pack(b"a roof"), None);
        let text = b"eave ridge hip valley ".repeat(100);
        let packed = pack(&text).unwrap();
        assert!(packed.len() < text.len() / 10);
        assert_eq!(unpack(&packed).unwrap(), text);
        assert_eq!(unpack(&packed[..packed.len() - 1]), None);
        let bomb = zstd::stream::encode_all(&vec![0; 9 << 20][..], 3).unwrap();
        assert_eq!(unpack(&bomb), None);
    }
}

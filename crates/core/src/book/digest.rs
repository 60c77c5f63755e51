//! One number for a set of entries, the same in any order: equal sets, equal digests.

use super::entry::Entry;
use sha2::{Digest, Sha256};
use std::collections::BTreeSet;
use uuid::Uuid;

/// How many entries a set holds, and their digest.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct SetDigest {
    /// Entries.
    pub count: u64,
    /// The sum, the most significant byte first.
    sum: [u8; 32],
}

impl SetDigest {
    /// The sum as 64 hex digits.
    #[must_use]
    pub fn hex(&self) -> String {
        super::entry::hex(&self.sum)
    }

    /// The digest that was kept as its count and its [`SetDigest::hex`]; `None` for another text.
    #[must_use]
    pub fn from_hex(count: u64, hex: &str) -> Option<SetDigest> {
        let digits = hex.len() == 64 && hex.bytes().all(|digit| digit.is_ascii_hexdigit());
        let mut sum = [0; 32];
        for (at, byte) in sum.iter_mut().enumerate() {
            *byte = u8::from_str_radix(hex.get(2 * at..2 * at + 2)?, 16).ok()?;
        }
        digits.then_some(SetDigest { count, sum })
    }

    /// Takes one entry more into the set.
    #[must_use]
    pub fn with(mut self, id: Uuid, sha256: &str) -> SetDigest {
        let mut id_text = Uuid::encode_buffer();
        let one = Sha256::new()
            .chain_update(id.hyphenated().encode_lower(&mut id_text))
            .chain_update(sha256)
            .finalize();
        let mut carry = 0;
        for (at, byte) in self.sum.iter_mut().zip(one).rev() {
            let [high, low] = (u16::from(*at) + u16::from(byte) + carry).to_be_bytes();
            (carry, *at) = (u16::from(high), low);
        }
        self.count += 1;
        self
    }
}

/// The digest of a set of entries: the sum modulo 2^256 of the SHA-256 of each one's id followed by
/// the SHA-256 of its body, both as text. An entry said twice counts once.
///
/// A sum, not an exclusive or, since it is as cheap and an entry counted twice shows in it
/// (Bellare and Micciancio 1997, on hashing a set by adding).
pub fn digest<'a>(entries: impl IntoIterator<Item = &'a Entry>) -> SetDigest {
    let set: BTreeSet<(Uuid, &str)> = entries
        .into_iter()
        .map(|entry| (entry.id, entry.sha256.as_str()))
        .collect();
    set.into_iter()
        .fold(SetDigest::default(), |sum, (id, sha256)| {
            sum.with(id, sha256)
        })
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    const FIRST: Uuid = Uuid::from_u128(0x0196_8a5e_7d00_7000_8000_0000_0000_0001);
    const SECOND: Uuid = Uuid::from_u128(0x0196_8a5e_7d00_7000_8000_0000_0000_0002);
    /// SHA-256 of `{}`.
    const EMPTY_BODY: &str = "44136fa355b3678a1146ad16f7e8649e94fb4fc21fe77e8310c060f61caaff8a";

    fn of(ids: &[Uuid]) -> SetDigest {
        ids.iter()
            .fold(SetDigest::default(), |sum, id| sum.with(*id, EMPTY_BODY))
    }

    #[test]
    fn nothing_sums_to_nothing() {
        assert_eq!(SetDigest::default().hex(), "0".repeat(64));
    }

    /// Reckoned with Python: `int(hashlib.sha256((id + sha).encode()).hexdigest(), 16)` summed
    /// modulo `2**256`.
    #[test]
    fn two_entries_sum_as_another_program_sums_them() {
        assert_eq!(
            of(&[FIRST]).hex(),
            "26d79fcf0ef8732faa903ccdd58c2d3aa6fbe4bffe69d1ac8d699f1e2600368d"
        );
        assert_eq!(
            of(&[FIRST, SECOND]).hex(),
            "7a35b29b78ad8606bf3c53fb695882ddaa8a959c9ba4a7b56365b7f465efacb1"
        );
        assert_eq!(of(&[FIRST, SECOND]).count, 2);
    }

    #[test]
    fn a_digest_kept_as_text_is_the_same_when_read() {
        let two = of(&[FIRST, SECOND]);
        assert_eq!(SetDigest::from_hex(2, &two.hex()), Some(two));
        for bad in ["", "26", &"+1".repeat(32), &"é".repeat(32)] {
            assert_eq!(SetDigest::from_hex(2, bad), None, "{bad}");
        }
    }

    #[test]
    fn a_sum_past_the_last_number_begins_again() {
        let full = SetDigest {
            count: 1,
            sum: [0xff; 32],
        };
        let one = SetDigest::default().with(FIRST, EMPTY_BODY);
        let mut less = one.sum;
        for byte in less.iter_mut().rev() {
            let (rest, borrowed) = byte.overflowing_sub(1);
            *byte = rest;
            if !borrowed {
                break;
            }
        }
        assert_eq!(full.with(FIRST, EMPTY_BODY).sum, less);
    }

    proptest! {
        #[test]
        fn order_does_not_matter_and_one_entry_more_does(
            mut ids in prop::collection::btree_set(any::<u128>(), 1..40),
        ) {
            let ids: Vec<Uuid> = std::mem::take(&mut ids).into_iter().map(Uuid::from_u128).collect();
            let turned: Vec<Uuid> = ids.iter().rev().copied().collect();
            prop_assert_eq!(of(&ids), of(&turned));
            prop_assert_ne!(of(&ids).hex(), of(&ids[1..]).hex());
        }
    }
}

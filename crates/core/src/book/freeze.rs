//! Which version of a packet comes next, and of which entries one was made.
//!
//! The freeze of a packet is an entry, and so is to whom it went, but neither says anything of the
//! house: they count neither among the entries of a packet nor in their digest. So a packet made again with nothing booked since
//! is the same version, with the same bytes.

use super::digest::digest;
use super::entry::Entry;
use super::kinds::{Edition, FrozenEntries, Group, Kind, LastOf, PacketFrozen};
use std::collections::BTreeMap;
use uuid::Uuid;

/// Returns the entries that go into a packet: all but the notes about packets, which change nothing
/// of what a packet contains.
pub fn house_entries(entries: &[Entry]) -> impl Iterator<Item = &Entry> + Clone {
    entries
        .iter()
        .filter(|entry| Kind::group_of_name(&entry.kind) != Some(Group::PacketNote))
}

/// What a packet of these entries is made of, as its freeze says it.
#[must_use]
pub fn frozen(entries: &[Entry]) -> FrozenEntries {
    let set = digest(house_entries(entries));
    let mut last: BTreeMap<(Uuid, Uuid), u64> = BTreeMap::new();
    for entry in house_entries(entries) {
        let dseq = last.entry((entry.device, entry.incarnation)).or_default();
        *dseq = entry.dseq.max(*dseq);
    }
    FrozenEntries {
        count: set.count,
        digest: set.hex(),
        up_to: last
            .into_iter()
            .map(|((device, incarnation), dseq)| LastOf {
                device,
                incarnation,
                dseq,
            })
            .collect(),
    }
}

/// What is to be made when a packet is asked for.
#[derive(Clone, Debug, PartialEq)]
pub enum Next<'a> {
    /// The same once more: nothing was booked since.
    Same(&'a PacketFrozen),
    /// A new version.
    Version {
        /// Its number, from 1.
        number: u32,
        /// The id of the version before.
        before: Option<&'a str>,
    },
}

/// What a packet of an edition would be now. `frozen`: the freezes of the job in display order;
/// `now`: what it would be made of.
#[must_use]
pub fn next<'a>(
    frozen: &'a [(Uuid, PacketFrozen)],
    edition: Edition,
    now: &FrozenEntries,
) -> Next<'a> {
    let same = frozen.iter().map(|(_, freeze)| freeze);
    // Two devices may have made a version each before they met: the greater number counts, and of
    // two alike the one booked last.
    let last = same
        .filter(|freeze| freeze.edition == edition)
        .max_by_key(|freeze| freeze.version);
    match last {
        None => Next::Version {
            number: 1,
            before: None,
        },
        Some(last) if (last.entries.count, &last.entries.digest) == (now.count, &now.digest) => {
            Next::Same(last)
        }
        Some(last) => Next::Version {
            number: last.version.saturating_add(1),
            before: Some(&last.packet),
        },
    }
}

/// The entries of which a packet was made, out of all that have come since. None: some are not
/// here, or what came since cannot be told from them.
#[must_use]
pub fn thawed(entries: &[Entry], freeze: &FrozenEntries) -> Option<Vec<Entry>> {
    let up_to: BTreeMap<(Uuid, Uuid), u64> = freeze
        .up_to
        .iter()
        .map(|last| ((last.device, last.incarnation), last.dseq))
        .collect();
    let then: Vec<Entry> = house_entries(entries)
        .filter(|entry| {
            let last = up_to.get(&(entry.device, entry.incarnation));
            last.is_some_and(|last| entry.dseq <= *last)
        })
        .cloned()
        .collect();
    let found = digest(&then);
    ((found.count, found.hex()) == (freeze.count, freeze.digest.clone())).then_some(then)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::book::clock::Hlc;
    use crate::book::entry::Stamp;
    use crate::book::fold::fold;
    use crate::book::kinds::JobStarted;

    /// A phone and what it books.
    struct Phone {
        number: u128,
        booked: u64,
    }

    impl Phone {
        fn new(number: u128) -> Phone {
            Phone { number, booked: 0 }
        }

        fn books(&mut self, kind: &Kind) -> Entry {
            self.booked += 1;
            let id = self.number << 64 | u128::from(self.booked);
            let stamp = Stamp {
                id: uuid::Builder::from_u128(id)
                    .with_version(uuid::Version::SortRand)
                    .into_uuid(),
                book: Uuid::nil(),
                device: Uuid::from_u128(self.number),
                incarnation: Uuid::from_u128(self.number),
                dseq: self.booked,
                author: "me".to_owned(),
                hlc: Hlc::new(self.booked, 0),
                local_time: "2026-05-02T14:41:07-05:00".to_owned(),
            };
            Entry::new(stamp, kind, Vec::new())
        }

        fn says(&mut self, address: &str) -> Entry {
            let address = address.to_owned();
            let pretend = true;
            self.books(&Kind::JobStarted(JobStarted { address, pretend }))
        }

        fn freezes(&mut self, entries: &[Entry], edition: Edition, version: u32) -> Entry {
            self.books(&Kind::PacketFrozen(PacketFrozen {
                packet: format!("{:064x}", version),
                edition,
                version,
                before: None,
                moment: "2026-05-02T14:41:07-05:00".to_owned(),
                reader: None,
                entries: frozen(entries),
                made_with: "eavebook 0.1.0".to_owned(),
            }))
        }
    }

    fn version(entries: &[Entry], edition: Edition) -> (u32, Option<String>) {
        let book = fold(entries);
        match next(&book.frozen, edition, &frozen(entries)) {
            Next::Same(freeze) => (freeze.version, None),
            Next::Version { number, before } => (number, Some(before.unwrap_or("none").to_owned())),
        }
    }

    #[test]
    fn a_packet_made_again_with_nothing_booked_since_is_the_same_version() {
        let mut phone = Phone::new(1);
        let mut book = vec![phone.says("12 Invented Lane")];
        assert_eq!(version(&book, Edition::Owner), (1, Some("none".into())));
        book.push(phone.freezes(&book, Edition::Owner, 1));
        assert_eq!(version(&book, Edition::Owner), (1, None));
        // Another reader's packet is no change of the house either, and counts for itself.
        book.push(phone.freezes(&book, Edition::Firm, 1));
        assert_eq!(version(&book, Edition::Owner), (1, None));
        assert_eq!(version(&book, Edition::Crew), (1, Some("none".into())));
    }

    #[test]
    fn after_a_booking_the_next_version_names_the_one_before() {
        let mut phone = Phone::new(1);
        let mut book = vec![phone.says("12 Invented Lane")];
        book.push(phone.freezes(&book, Edition::Owner, 1));
        book.push(phone.says("14 Invented Lane"));
        let before = format!("{:064x}", 1);
        assert_eq!(version(&book, Edition::Owner), (2, Some(before)));
    }

    #[test]
    fn an_old_version_finds_its_entries_again_whatever_came_since_and_from_where() {
        let (mut phone, mut laptop) = (Phone::new(1), Phone::new(2));
        let mut book = vec![phone.says("12 Invented Lane"), phone.says("a leg")];
        let first = frozen(&book);
        let then = book.clone();
        book.push(phone.freezes(&book, Edition::Owner, 1));
        book.push(phone.says("another leg"));
        // Booked elsewhere before the freeze, and come only now.
        book.insert(0, laptop.says("a tie"));
        assert_eq!(thawed(&book, &first), Some(then));
        assert_eq!(thawed(&book[2..], &first), None);
    }

    #[test]
    fn a_freeze_says_nothing_house_entries() {
        let mut phone = Phone::new(1);
        let house = vec![phone.says("12 Invented Lane")];
        let mut with_freeze = house.clone();
        with_freeze.push(phone.freezes(&house, Edition::Firm, 1));
        assert_eq!(frozen(&house), frozen(&with_freeze));
        let [without, with] = [&house, &with_freeze].map(fold);
        assert_eq!(without.acts, with.acts);
        assert_eq!(with.frozen.len(), 1);
    }
}

//! The laws of the exchange, against a hub in memory: whatever is lost, cut off, said twice or
//! restored, at the end every side has the same set, and it holds all that any living side had.
//!
//! A failure prints its seed; proptest keeps it in `proptest-regressions`.
#![allow(
    clippy::unwrap_used,
    clippy::panic,
    reason = "a test that cannot go on has failed"
)]

mod device;
mod hub;
#[path = "../../../../tests/crash/size.rs"]
mod size;

use device::{Books, Device, Merge};
use eavebook_core::book::entry::Entry;
use eavebook_sync::{Act, Event, Request, Response, SyncStatus, SyncStore};
use hub::Hub;
use proptest::prelude::*;
use proptest::strategy::ValueTree;
use proptest::test_runner::{RngAlgorithm, TestRng, TestRunner};
use size::size;
use std::collections::{BTreeMap, BTreeSet};
use uuid::Uuid;

const DEVICES: usize = 5;
const NOW: u64 = 1_800_000_000_000;

/// What happens.
#[derive(Clone, Debug)]
enum Happens {
    Books {
        device: usize,
        photo: Option<u32>,
    },
    /// So many questions are asked and answered.
    Talks {
        device: usize,
        questions: u8,
    },
    /// The question does not arrive.
    Lost {
        device: usize,
    },
    /// It arrives, and its answer does not.
    AnswerLost {
        device: usize,
    },
    Killed {
        device: usize,
    },
    /// The disk of a device is remembered.
    DeviceCopied {
        device: usize,
    },
    /// A device goes back to the copy.
    DeviceRestored {
        device: usize,
    },
    /// The disk of a device is put into another phone too: both live on with one identity.
    DeviceCloned {
        device: usize,
        onto: usize,
    },
    /// The last question of a device arrives once more.
    Replayed {
        device: usize,
    },
    HubCopied,
    HubRestored,
    /// Another hub, empty, stands at the address.
    HubReplaced,
}

fn happens() -> impl Strategy<Value = Happens> {
    let photo = prop_oneof![
        8 => Just(None),
        3 => (1_u32..2000).prop_map(Some),
        1 => ((1_u32 << 20) - 1..(1 << 20) + 2).prop_map(Some),
        1 => Just(Some((2 << 20) + 5)),
    ];
    happens_to(DEVICES, photo)
}

fn happens_to(
    devices: usize,
    photo: impl Strategy<Value = Option<u32>> + 'static,
) -> impl Strategy<Value = Happens> {
    let device = 0..devices;
    prop_oneof![
        8 => (device.clone(), photo).prop_map(|(device, photo)| Happens::Books { device, photo }),
        8 => (device.clone(), 1_u8..12)
            .prop_map(|(device, questions)| Happens::Talks { device, questions }),
        3 => device.clone().prop_map(|device| Happens::Lost { device }),
        3 => device.clone().prop_map(|device| Happens::AnswerLost { device }),
        2 => device.clone().prop_map(|device| Happens::Killed { device }),
        1 => device.clone().prop_map(|device| Happens::DeviceCopied { device }),
        1 => device.clone().prop_map(|device| Happens::DeviceRestored { device }),
        1 => (device.clone(), device.clone())
            .prop_map(|(device, onto)| Happens::DeviceCloned { device, onto }),
        2 => device.prop_map(|device| Happens::Replayed { device }),
        1 => Just(Happens::HubCopied),
        1 => Just(Happens::HubRestored),
        1 => Just(Happens::HubReplaced),
    ]
}

struct World {
    hub: Hub,
    hub_copy: Hub,
    devices: Vec<Device>,
    copies: Vec<Books>,
    booked: u64,
    /// What must be everywhere at the end.
    must: BTreeSet<Uuid>,
}

impl World {
    fn new(merge: Merge) -> World {
        World::with_devices(DEVICES, merge)
    }

    fn with_devices(devices: usize, merge: Merge) -> World {
        let books: Vec<Books> = (1..=devices as u128)
            .map(|number| Books::new(number, merge))
            .collect();
        World {
            hub: Hub::default(),
            hub_copy: Hub::default(),
            devices: books.iter().cloned().map(Device::new).collect(),
            copies: books,
            booked: 0,
            must: BTreeSet::new(),
        }
    }

    fn id(&mut self) -> Uuid {
        self.booked += 1;
        let spread = sha(self.booked);
        uuid::Builder::from_unix_timestamp_millis(NOW + self.booked, &spread).into_uuid()
    }

    fn happens(&mut self, what: &Happens) {
        match *what {
            Happens::Books { device, photo } => {
                let id = self.id();
                let bytes = photo.map(|size| {
                    let mut bytes = vec![7; size as usize];
                    bytes[0] = (self.booked % 5) as u8;
                    bytes
                });
                self.devices[device].books.book(id, bytes);
                self.must.insert(id);
            }
            Happens::Talks { device, questions } => {
                for _ in 0..questions {
                    self.talk(device);
                }
            }
            Happens::Lost { device } => self.lost(device),
            Happens::AnswerLost { device } => {
                if let Some(asked) = self.devices[device].asks.take() {
                    self.hub.answer(&asked);
                }
                self.lost(device);
            }
            Happens::Killed { device } => self.devices[device].killed(),
            Happens::DeviceCopied { device } => {
                self.copies[device] = self.devices[device].books.clone();
            }
            Happens::DeviceRestored { device } => {
                self.devices[device] = Device::new(self.copies[device].clone());
                self.forget();
            }
            Happens::DeviceCloned { device, onto } => {
                self.devices[onto] = Device::new(self.devices[device].books.clone());
                self.forget();
            }
            Happens::Replayed { device } => {
                if let Some(asked) = self.devices[device].asked.clone() {
                    self.hub.answer(&asked);
                }
            }
            Happens::HubReplaced => {
                self.hub = Hub {
                    number: self.hub.number + 1,
                    ..Hub::default()
                };
                self.forget();
            }
            Happens::HubCopied => self.hub_copy = self.hub.clone(),
            Happens::HubRestored => {
                let epoch = self.hub.epoch + 1;
                self.hub = Hub {
                    epoch,
                    number: self.hub.number,
                    ..self.hub_copy.clone()
                };
                self.forget();
            }
        }
    }

    fn lost(&mut self, device: usize) {
        let failed = Event::Failed("the connection broke".to_owned());
        self.devices[device].handle(NOW, failed);
    }

    fn talk(&mut self, device: usize) -> Option<Act> {
        let event = match self.devices[device].asks.take() {
            Some(asked) => {
                self.photos_first(device, &asked);
                Event::Answer(self.hub.answer(&asked))
            }
            None => Event::Begin,
        };
        let act = self.devices[device].handle(NOW, event);
        (!matches!(act, Act::Ask(_))).then_some(act)
    }

    /// No entry is offered before the photo that it names, where this device has it.
    fn photos_first(&self, device: usize, asked: &Request) {
        if asked.path != "/v1/entries" {
            return;
        }
        let body = String::from_utf8_lossy(&asked.body);
        if !body.contains(&self.hub.epoch_name()) {
            return; // Meant for the hub as it was: it will be refused.
        }
        for photo in self.devices[device].books.photos.keys() {
            assert!(!body.contains(photo) || self.hub.photos.contains_key(photo));
        }
    }

    /// What nobody has any more is nobody's to bring.
    fn forget(&mut self) {
        let mut somewhere = self.hub.ids();
        for device in &self.devices {
            somewhere.extend(device.books.entries.keys());
        }
        self.must.retain(|id| somewhere.contains(id));
    }

    /// Every device talks until it is in step, three times around.
    fn settle(&mut self) -> Result<(), String> {
        for around in 0..3 {
            for device in 0..self.devices.len() {
                self.devices[device].asks = None;
                let mut asked = 0;
                while self.talk(device).is_none() {
                    asked += 1;
                    if asked > 5000 + self.hub.feed.len() {
                        return Err(format!("device {device} asks for ever in round {around}"));
                    }
                }
            }
        }
        Ok(())
    }

    /// The laws.
    fn holds(&self) -> Result<(), String> {
        let on_hub = self.hub.ids();
        let feed: BTreeMap<Uuid, &Entry> = self.hub.feed.iter().map(|one| (one.id, one)).collect();
        if on_hub.len() != self.hub.feed.len() {
            return Err("the hub holds an entry twice".to_owned());
        }
        if !self.must.is_subset(&on_hub) {
            return Err(format!(
                "{} entries are lost",
                self.must.difference(&on_hub).count()
            ));
        }
        for (number, device) in self.devices.iter().enumerate() {
            if *device.client.status() != SyncStatus::InStep {
                return Err(format!("device {number}: {:?}", device.client.status()));
            }
            let on_device: BTreeSet<Uuid> = device.books.entries.keys().copied().collect();
            if on_device != on_hub {
                return Err(format!(
                    "device {number} has {} of {}",
                    on_device.len(),
                    on_hub.len()
                ));
            }
            for entry in device.books.entries.values() {
                if feed.get(&entry.id) != Some(&entry) {
                    return Err(format!("entry {} differs on device {number}", entry.id));
                }
                let no_photo = |name: &&String| !device.books.photos.contains_key(*name);
                if let Some(photo) = entry.refs.iter().find(no_photo) {
                    let lost = !self.hub.photos.contains_key(photo)
                        && !self
                            .devices
                            .iter()
                            .any(|one| one.books.photos.contains_key(photo));
                    if !lost {
                        return Err(format!("device {number} lacks photo {photo}"));
                    }
                }
            }
        }
        Ok(())
    }
}

fn sha(number: u64) -> [u8; 10] {
    let hex = eavebook_core::book::entry::sha256_hex(&number.to_be_bytes());
    let mut bytes = [0; 10];
    bytes.copy_from_slice(&hex.as_bytes()[..10]);
    bytes
}

fn run(story: &[Happens], merge: Merge) -> Result<(), String> {
    run_in(World::new(merge), story)
}

fn run_in(mut world: World, story: &[Happens]) -> Result<(), String> {
    for what in story {
        world.happens(what);
    }
    world.settle()?;
    world.holds()
}

#[test]
fn stories_of_five_devices_keep_the_laws() {
    let stories = size("stories", 40, 5000);
    let mut runner = TestRunner::deterministic();
    let many = prop::collection::vec(happens(), 40..120);
    let mut happened = 0;
    for number in 0..stories {
        let story = many.new_tree(&mut runner).unwrap().current();
        happened += story.len();
        assert_eq!(run(&story, Merge::Union), Ok(()), "story {number}");
    }
    println!(
        "drill 4: {stories} stories of {DEVICES} devices, {happened} happenings with cuts, kills, \
         restores and clones, 0 lost, the runner's fixed seed"
    );
}

#[test]
fn many_devices_in_companies_each_of_its_own_seed_keep_the_laws() {
    // A company is a world of its own: devices of two never meet.
    let companies: u16 = size("companies", 20, 100);
    let devices: usize = size("devices", 10, 100);
    let acts: usize = size("acts", 8, 100);
    let mut happened = 0;
    for company in 0..companies {
        let mut seed = [0; 32];
        seed[..2].copy_from_slice(&company.to_le_bytes());
        let chance = TestRng::from_seed(RngAlgorithm::ChaCha, &seed);
        let mut runner = TestRunner::new_with_rng(ProptestConfig::default(), chance);
        let photo = prop_oneof![5 => Just(None), 1 => (1_u32..300).prop_map(Some)];
        let story = prop::collection::vec(happens_to(devices, photo), devices * acts);
        let story = story.new_tree(&mut runner).unwrap().current();
        happened += story.len();
        let world = World::with_devices(devices, Merge::Union);
        assert_eq!(run_in(world, &story), Ok(()), "company of seed {company}");
    }
    println!(
        "drill 4 many: {} devices in {companies} companies, {happened} happenings, 0 lost, seeds 0 to \
         {}",
        usize::from(companies) * devices,
        companies - 1
    );
}

#[test]
fn devices_and_hubs_of_neighboring_versions_exchange_or_refuse_in_words_and_lose_nothing() {
    // The device speaks the first protocol; a hub may speak others beside it, or others alone.
    for (min, max, speaks) in [(1, 1, true), (1, 2, true), (0, 1, true), (2, 3, false)] {
        let mut world = World::new(Merge::Union);
        world.hub.protocol = (min, max);
        world.hub.says_more = max > 1;
        for device in 0..DEVICES {
            for photo in [None, Some(500)] {
                world.happens(&Happens::Books { device, photo });
            }
        }
        if speaks {
            // Entries are of a kind that no version knows yet, with a field more.
            world.settle().unwrap();
            world.holds().unwrap();
            assert_eq!(world.hub.feed.len(), 2 * DEVICES);
            continue;
        }
        while world.talk(0).is_none() {}
        let message = format!("{:?}", world.devices[0].client.status());
        assert!(message.contains("update"), "{message}");
        assert_eq!(world.devices[0].books.entries.len(), 2);
        // Once both are of one version, all of it goes.
        world.hub.protocol = (1, 3);
        world.settle().unwrap();
        world.holds().unwrap();
    }
    println!("drill 8 versions: a device of version 1, hubs of 0-1, 1, 1-2 and 2-3: 0 lost");
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(64))]

    #[test]
    fn whatever_happens_every_side_ends_with_the_same_set_and_nothing_is_lost(
        story in prop::collection::vec(happens(), 1..80),
    ) {
        prop_assert_eq!(run(&story, Merge::Union), Ok(()));
    }
}

#[test]
fn a_merge_that_goes_by_device_and_count_is_caught() {
    let mut runner = TestRunner::deterministic();
    let stories = prop::collection::vec(happens(), 40..80);
    let caught = (0..60)
        .filter(|_| {
            let story = stories.new_tree(&mut runner).unwrap().current();
            run(&story, Merge::ByCount).is_err()
        })
        .count();
    assert!(caught > 0);
    println!("drill 4 control: a merge by count is caught by {caught} of 60 stories");
}

#[test]
fn what_was_said_once_is_not_said_again_in_the_next_round() {
    let mut world = World::new(Merge::Union);
    for device in 0..DEVICES {
        for photo in [None, Some(500)] {
            world.happens(&Happens::Books { device, photo });
        }
    }
    world.settle().unwrap();
    world.holds().unwrap();
    let asked = world.hub.asked;
    world.settle().unwrap();
    // Hello and the end of the feed, three times around.
    assert_eq!(world.hub.asked - asked, 3 * DEVICES * 2);
}

#[test]
fn who_listens_has_what_another_books_without_another_round() {
    let mut world = World::new(Merge::Union);
    world.settle().unwrap();
    world.happens(&Happens::Books {
        device: 0,
        photo: Some(3 << 20),
    });
    while world.talk(0).is_none() {}
    let asked = world.devices[1].asks.clone().unwrap();
    assert!(asked.path.contains("wait=25"), "{}", asked.path);
    let before = world.hub.asked;
    while world.talk(1).is_none() {}
    assert_eq!(world.devices[1].books.entries.len(), 1);
    assert_eq!(world.devices[1].books.photos.len(), 1);
    // The page, what it names, three pieces.
    assert_eq!(world.hub.asked - before, 5);
}

#[test]
fn a_photo_cut_off_while_it_comes_goes_on_behind_the_last_piece() {
    let mut world = World::new(Merge::Union);
    world.happens(&Happens::Books {
        device: 0,
        photo: Some((5 << 20) + 7),
    });
    while world.talk(0).is_none() {}
    let name = world.devices[0].books.photos.keys().next().unwrap().clone();
    let mut spans = Vec::new();
    while !world.devices[1].books.photos.contains_key(&name) {
        world.talk(1);
        let Some(span) = world.devices[1].asks.as_ref().and_then(|asked| asked.span) else {
            continue;
        };
        spans.push(span.0 >> 20);
        // Every second piece the program is killed, and its question with it.
        if spans.len() % 2 == 0 {
            world.devices[1].killed();
        }
    }
    assert_eq!(spans, [0, 1, 1, 2, 2, 3, 3, 4, 4, 5, 5]);
    assert!(world.devices[1].books.photos[&name] == world.devices[0].books.photos[&name]);
}

#[test]
fn an_entry_that_the_hub_rejects_stays_here_and_holds_nobody_up() {
    let mut world = World::new(Merge::Union);
    for _ in 0..20 {
        world.happens(&Happens::Books {
            device: 0,
            photo: None,
        });
    }
    let poison = *world.must.iter().nth(7).unwrap();
    world.hub.poison.insert(poison);
    world.settle().unwrap();
    assert_eq!(world.hub.feed.len(), 19);
    let books = &world.devices[0].books;
    assert_eq!(books.turned_back[&poison.to_string()], "because");
    assert!(books.entries.contains_key(&poison));
    assert_eq!(world.devices[0].client.status(), &SyncStatus::InStep);
}

#[test]
fn a_call_that_the_hub_cannot_read_is_halved_down_to_the_one_entry() {
    let mut device = Device::new(Books::new(1, Merge::Union));
    let mut hub = Hub::default();
    let mut world = World::new(Merge::Union);
    let ids: Vec<Uuid> = (0..20).map(|_| world.id()).collect();
    for id in &ids {
        device.books.book(*id, None);
    }
    let poison = ids[11].to_string();
    let mut act = device.handle(NOW, Event::Begin);
    while let Act::Ask(asked) = act {
        let holds_it = String::from_utf8_lossy(&asked.body).contains(&poison);
        let answer = if asked.path == "/v1/entries" && holds_it {
            Response {
                status: 400,
                retry_after: None,
                whole: None,
                body: br#"{"code":"malformed","detail":"no"}"#.to_vec(),
            }
        } else {
            hub.answer(&asked)
        };
        act = device.handle(NOW, Event::Answer(answer));
    }
    assert_eq!(hub.feed.len(), 19);
    assert_eq!(device.books.turned_back[&poison], "no");
}

#[test]
fn a_device_that_was_turned_out_stops_and_says_so() {
    let mut world = World::new(Merge::Union);
    world.happens(&Happens::Books {
        device: 0,
        photo: None,
    });
    world.hub.revoked = true;
    let mut act = None;
    while act.is_none() {
        act = world.talk(0);
    }
    assert_eq!(act, Some(Act::Stop));
    let message = format!("{:?}", world.devices[0].client.status());
    assert!(
        message.contains("no longer lets this device in"),
        "{message}"
    );
    assert_eq!(world.devices[0].books.entries.len(), 1);
}

#[test]
fn two_contents_of_one_id_are_both_kept_on_every_device() {
    let mut world = World::new(Merge::Union);
    let id = world.id();
    world.devices[0].books.book(id, None);
    world.devices[1].books.book(id, None);
    world.settle().unwrap();
    // Who sent the first finds out by the next comparison: at a start, or a day later.
    world.devices[0].killed();
    world.settle().unwrap();
    for (number, device) in world.devices.iter().enumerate() {
        let kept = device.books.entries.len() + device.books.conflicts.len();
        assert_eq!(kept, 2, "device {number}");
    }
}

#[test]
fn sets_that_differ_unseen_are_made_one_and_only_the_difference_moves() {
    let mut world = World::new(Merge::Union);
    for _ in 0..60 {
        world.happens(&Happens::Books {
            device: 0,
            photo: None,
        });
    }
    world.settle().unwrap();
    // One device lost rows that its cursor is past; another believes to have sent what it has not.
    let gone: Vec<Uuid> = world.must.iter().copied().step_by(20).collect();
    world.devices[1]
        .books
        .entries
        .retain(|id, _| !gone.contains(id));
    let mut unsent = Vec::new();
    for _ in 0..4 {
        let id = world.id();
        world.devices[2].books.book(id, None);
        world.must.insert(id);
        unsent.push(id);
    }
    world.devices[2].books.acknowledge(&unsent).unwrap();
    for device in &mut world.devices {
        device.killed();
    }
    world.settle().unwrap();
    world.holds().unwrap();
    let moved: Vec<u64> = world
        .devices
        .iter()
        .map(|one| one.client.repairs())
        .collect();
    assert_eq!(moved, [0, gone.len() as u64, 4, 0, 0]);
}

#[test]
fn a_hub_that_has_less_than_it_had_is_offered_everything_again() {
    let mut world = World::new(Merge::Union);
    for _ in 0..30 {
        world.happens(&Happens::Books {
            device: 0,
            photo: None,
        });
    }
    world.settle().unwrap();
    world.hub.feed.truncate(11);
    world.settle().unwrap();
    world.holds().unwrap();
    assert_eq!(world.hub.feed.len(), 30);
}

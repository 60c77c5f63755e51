//! Two field books on disk, a hub on disk, sockets between them, connections that break at random.
#![allow(
    clippy::unwrap_used,
    clippy::panic,
    reason = "a test that cannot go on has failed"
)]

mod breaks;
mod drills;
mod keys;
#[path = "../../../../tests/crash/size.rs"]
mod size;

use breaks::Breaks;
use eavebook_core::book::clock::Hlc;
use eavebook_core::book::entry::{Entry, sha256_hex};
use eavebook_hub::{RunningHub, Settings, Transport};
use eavebook_store::{Copies, Device, DraftAfter, Store};
use eavebook_sync::{Act, Client, Invitation, Link, SharedStore, SyncLoop, SyncStatus, Wake, pair};
use std::collections::BTreeSet;
use std::net::SocketAddr;
use std::path::Path;
use std::sync::{Arc, Mutex};
use std::time::SystemTime;
use uuid::Uuid;

fn now_ms() -> u64 {
    let since = SystemTime::now().duration_since(SystemTime::UNIX_EPOCH);
    since.unwrap().as_millis() as u64
}

/// A hub in this process.
pub(crate) struct Yard {
    pub(crate) dir: tempfile::TempDir,
    pub(crate) hub: Option<RunningHub>,
    pub(crate) settings: Settings,
}

impl Yard {
    pub(crate) fn new(transport: Transport) -> Yard {
        let dir = tempfile::tempdir().unwrap();
        let settings = Settings {
            transport,
            per_second: 1_000_000,
            uploads: 64,
            ..Settings::new(&dir.path().join("hub"))
        };
        let hub = Some(RunningHub::begin(&settings).unwrap());
        Yard { dir, hub, settings }
    }

    pub(crate) fn address(&self) -> SocketAddr {
        self.hub.as_ref().unwrap().address
    }

    pub(crate) fn link(&self) -> String {
        eavebook_hub::code(&self.settings.dir, "Ridge", Some("Ada"))
            .unwrap()
            .link
    }

    /// A new book, paired.
    pub(crate) fn paired(&self, name: &str) -> Mine {
        let book = new_book(&self.dir.path().join(name));
        let mut mine = Mine {
            book: Arc::new(Mutex::new(book)),
            client: Client::new(name.len() as u64),
        };
        let invitation = Invitation::read(&self.link()).unwrap();
        pair(&mut mine.book.lock().unwrap(), &invitation, name).unwrap();
        mine.client = Client::new(7);
        mine
    }
}

pub(crate) fn new_book(dir: &Path) -> Store {
    let mut book = Store::open(dir).unwrap();
    book.set_device(Device {
        id: Uuid::now_v7(),
        incarnation: Uuid::now_v7(),
        name: "this phone".to_owned(),
        author: "me".to_owned(),
        settings: "{}".to_owned(),
        dseq: 0,
        hlc: Hlc::default(),
    })
    .unwrap();
    book
}

/// A book on disk with its client.
pub(crate) struct Mine {
    pub(crate) book: Arc<Mutex<Store>>,
    client: Client,
}

impl Mine {
    /// Books a note, with a photo where bytes are given.
    fn books(&self, job: Uuid, photo: Option<&[u8]>) -> Uuid {
        let mut book = self.book.lock().unwrap();
        let refs = photo.map(|mut bytes| book.put_photo(&mut bytes).unwrap().sha256);
        let turn = book.next_turn(now_ms()).unwrap();
        let device = book.device().unwrap().clone();
        let body = format!("{{\"text\":\"{} {}\"}}", device.id, turn.dseq);
        let entry = Entry {
            id: Uuid::now_v7(),
            book: job,
            device: device.id,
            incarnation: device.incarnation,
            dseq: turn.dseq,
            author: device.author,
            hlc: turn.hlc,
            kind: "note".to_owned(),
            kind_version: 1,
            local_time: "2026-05-02T14:41:07-05:00".to_owned(),
            supersedes: Vec::new(),
            refs: refs.into_iter().collect(),
            sha256: sha256_hex(body.as_bytes()),
            body,
            other: std::collections::BTreeMap::new(),
        };
        let id = entry.id;
        book.append(&[entry], DraftAfter::AsItIs).unwrap();
        id
    }

    /// One round by way of an address; the client is kept.
    fn round_by(&mut self, address: Option<SocketAddr>) -> Act {
        let pairing = self.book.lock().unwrap().pairing().unwrap().unwrap();
        let url = address.map_or(pairing.url, |address| format!("http://{address}"));
        let link = Link::new(&url, pairing.pin.as_deref(), Some(&pairing.token)).unwrap();
        let mut runs = SyncLoop {
            client: std::mem::replace(&mut self.client, Client::new(1)),
            store: SharedStore(self.book.clone()),
            link,
        };
        let end = runs.round(&now_ms);
        self.client = runs.client;
        end
    }

    fn status(&self) -> &SyncStatus {
        self.client.status()
    }

    fn ids(&self) -> BTreeSet<Uuid> {
        let held = self.book.lock().unwrap().held().unwrap();
        let ids: BTreeSet<Uuid> = held.iter().map(|one| one.id).collect();
        assert_eq!(ids.len(), held.len());
        ids
    }

    fn copies(&self, job: Uuid) -> Copies {
        self.book.lock().unwrap().copies(job).unwrap()
    }
}

const IN_STEP: Copies = Copies::WithHub {
    waiting: 0,
    turned_back: 0,
    to_come: 0,
};

#[test]
fn two_books_and_a_hub_hold_one_set_however_often_their_connections_break() {
    let seed = 20_261_126;
    let yard = Yard::new(Transport::Plain);
    let breaks = Breaks::before(yard.address(), seed);
    let (mut first, mut second) = (yard.paired("first"), yard.paired("second"));
    let job = Uuid::now_v7();
    let mut booked = BTreeSet::new();
    let mut rounds = 0;
    for turn in 0..40_usize {
        let photo = (turn % 4 == 0).then(|| vec![turn as u8; 40_000 * (turn + 1)]);
        booked.insert(first.books(job, photo.as_deref()));
        booked.insert(second.books(job, None));
        for mine in [&mut first, &mut second] {
            mine.round_by(Some(breaks.address));
            rounds += 1;
            if turn % 7 == 3 {
                // A kill of the program: the machine's memory is gone.
                mine.client = Client::new(turn as u64);
            }
        }
    }
    let broken = breaks.broken();
    for _ in 0..2 {
        for mine in [&mut first, &mut second] {
            mine.round_by(None);
            assert_eq!(mine.status(), &SyncStatus::InStep);
        }
    }
    println!("seed {seed}: {rounds} rounds, {broken} connections broken");
    assert!(broken > 20, "{broken}");
    for mine in [&first, &second] {
        assert_eq!(mine.ids(), booked);
        assert_eq!(mine.copies(job), IN_STEP);
        assert_eq!(
            mine.book.lock().unwrap().photos_wanted().unwrap(),
            Vec::<String>::new()
        );
    }
}

#[test]
fn what_waits_is_counted_until_the_hub_has_acknowledged_it() {
    let mut yard = Yard::new(Transport::Plain);
    let book = new_book(&yard.dir.path().join("alone"));
    let job = Uuid::now_v7();
    assert_eq!(book.copies(job).unwrap(), Copies::HereOnly);
    let mut mine = yard.paired("phone");
    mine.books(job, Some(b"a photo"));
    mine.books(job, None);
    let waiting = Copies::WithHub {
        waiting: 3,
        turned_back: 0,
        to_come: 0,
    };
    assert_eq!(mine.copies(job), waiting);
    yard.hub.take().unwrap().stop();
    assert!(matches!(mine.round_by(None), Act::Rest(_)));
    assert!(
        matches!(mine.status(), SyncStatus::Waiting { why } if why.contains("cannot be reached"))
    );
    assert_eq!(mine.copies(job), waiting);
    let mut settings = yard.settings.clone();
    settings.listen = yard_address(&mine);
    yard.hub = Some(RunningHub::begin(&settings).unwrap());
    mine.round_by(None);
    assert_eq!(mine.status(), &SyncStatus::InStep);
    assert_eq!(mine.copies(job), IN_STEP);
}

fn yard_address(mine: &Mine) -> String {
    let pairing = mine.book.lock().unwrap().pairing().unwrap().unwrap();
    pairing.url.trim_start_matches("http://").to_owned()
}

#[test]
fn a_hub_restored_from_a_backup_is_offered_again_what_it_lacks() {
    let mut yard = Yard::new(Transport::Plain);
    let mut mine = yard.paired("phone");
    let job = Uuid::now_v7();
    mine.books(job, Some(b"the first photo"));
    mine.round_by(None);
    let file = yard.dir.path().join("monday.hub");
    eavebook_hub::backup(&yard.settings.dir, &file).unwrap();
    mine.books(job, Some(b"the second photo"));
    mine.round_by(None);
    let listen = yard_address(&mine);
    yard.hub.take().unwrap().stop();
    let settings = Settings {
        listen,
        dir: yard.dir.path().join("hub again"),
        ..yard.settings.clone()
    };
    eavebook_hub::restore(&file, &settings.dir).unwrap();
    yard.hub = Some(RunningHub::begin(&settings).unwrap());
    yard.settings = settings;
    mine.round_by(None);
    assert_eq!(mine.status(), &SyncStatus::InStep);
    let mut other = yard.paired("laptop");
    other.round_by(None);
    assert_eq!(other.ids(), mine.ids());
    assert_eq!(other.copies(job), IN_STEP);
}

#[test]
fn a_device_that_was_turned_out_stops_and_keeps_what_it_booked() {
    let yard = Yard::new(Transport::Plain);
    let mut mine = yard.paired("phone");
    let job = Uuid::now_v7();
    mine.books(job, None);
    let id = mine.book.lock().unwrap().device().unwrap().id;
    eavebook_hub::revoke(&yard.settings.dir, &id.to_string()).unwrap();
    assert_eq!(mine.round_by(None), Act::Stop);
    assert!(
        matches!(mine.status(), SyncStatus::Stopped { why } if why.contains("no longer lets this device in"))
    );
    assert_eq!(mine.ids().len(), 1);
}

#[test]
fn a_book_restored_from_a_copy_begins_another_life_and_gets_its_entries_back() {
    let yard = Yard::new(Transport::Plain);
    let mut mine = yard.paired("phone");
    let job = Uuid::now_v7();
    mine.books(job, None);
    mine.round_by(None);
    let (dir, copy) = (yard.dir.path().join("phone"), yard.dir.path().join("copy"));
    std::fs::create_dir(&copy).unwrap();
    for name in ["book.sqlite", "book.sqlite-wal", "pairing.json"] {
        std::fs::copy(dir.join(name), copy.join(name)).unwrap();
    }
    mine.books(job, None);
    mine.books(job, None);
    mine.round_by(None);
    let before = mine.book.lock().unwrap().device().unwrap().incarnation;
    let mut back = Mine {
        book: Arc::new(Mutex::new(Store::open(&copy).unwrap())),
        client: Client::new(3),
    };
    back.round_by(None);
    assert_eq!(back.ids(), mine.ids());
    assert_ne!(
        back.book.lock().unwrap().device().unwrap().incarnation,
        before
    );
}

#[test]
fn who_listens_is_told_at_once_and_who_books_while_listening_sends_at_once() {
    let yard = Yard::new(Transport::Tls);
    let (phone, laptop) = (yard.paired("phone"), yard.paired("laptop"));
    let job = Uuid::now_v7();
    let (sends, quiet) = std::sync::mpsc::channel();
    let wakes: [Arc<Wake>; 2] = Default::default();
    std::thread::scope(|scope| {
        for (mine, wake) in [(&phone, &wakes[0]), (&laptop, &wakes[1])] {
            let (book, wake, sends) = (mine.book.clone(), wake.clone(), sends.clone());
            let pairing = book.lock().unwrap().pairing().unwrap().unwrap();
            let link = Link::new(&pairing.url, pairing.pin.as_deref(), Some(&pairing.token));
            let mut runs = SyncLoop {
                client: Client::new(5),
                store: SharedStore(book.clone()),
                link: link.unwrap(),
            };
            scope.spawn(move || {
                runs.run(&wake, &now_ms, &mut |status, _| {
                    assert_eq!(status, &SyncStatus::InStep);
                    let held = book.lock().unwrap().held().unwrap().len();
                    sends.send(held).unwrap();
                });
            });
        }
        // Both listen now; the hub would answer neither for 25 seconds.
        assert_eq!((quiet.recv().unwrap(), quiet.recv().unwrap()), (0, 0));
        let began = std::time::Instant::now();
        for count in 1..=5 {
            phone.books(job, Some(&vec![count as u8; 2_500_000]));
            wakes[0].booked();
            // Both tell, the phone perhaps twice: its own entry comes back to it as one more page.
            let mut in_step_count = 0;
            while in_step_count < 2 {
                in_step_count += usize::from(quiet.recv().unwrap() == count);
                let in_step =
                    |mine: &Mine| mine.copies(job) == IN_STEP && mine.ids().len() == count;
                if in_step(&phone) && in_step(&laptop) {
                    break;
                }
            }
        }
        println!(
            "5 photos of 2.5 MB each went across in {:?}",
            began.elapsed()
        );
        let photos = laptop.book.lock().unwrap().photos_wanted().unwrap();
        assert_eq!(photos, Vec::<String>::new());
        wakes.iter().for_each(|wake| wake.end());
    });
}

#[test]
fn two_phones_with_one_identity_lose_nothing_and_are_named() {
    let yard = Yard::new(Transport::Plain);
    let mut mine = yard.paired("phone");
    let job = Uuid::now_v7();
    mine.books(job, None);
    mine.round_by(None);
    let (dir, copy) = (yard.dir.path().join("phone"), yard.dir.path().join("twin"));
    std::fs::create_dir(&copy).unwrap();
    for name in ["book.sqlite", "book.sqlite-wal", "pairing.json"] {
        std::fs::copy(dir.join(name), copy.join(name)).unwrap();
    }
    let mut twin = Mine {
        book: Arc::new(Mutex::new(Store::open(&copy).unwrap())),
        client: Client::new(3),
    };
    // Both give the same count to two entries before either has spoken to the hub.
    mine.books(job, None);
    twin.books(job, None);
    for _ in 0..2 {
        mine.round_by(None);
        twin.round_by(None);
    }
    assert_eq!(mine.ids().len(), 3);
    assert_eq!(mine.ids(), twin.ids());
    assert!(mine.client.duplicate() && twin.client.duplicate());
}

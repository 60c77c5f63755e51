//! Packets of the pretend house, asked for as a screen asks.

use crate::person::Person;
use eavebook_app::places::job_file::make::Wanted;
use eavebook_app::reply::{PacketsView, Reply};
use eavebook_app::request::{
    Edition, FieldBookRequest, JobFileRequest, Key, PlanRequest, TodayRequest, WalkRoundRequest,
};
use eavebook_app::{App, demo};
use eavebook_core::book::kinds::{PhotoWord, SendStage};
use std::path::PathBuf;
use std::sync::atomic::{AtomicBool, Ordering};
use tempfile::TempDir;
use uuid::Uuid;

struct House {
    dir: TempDir,
    app: App,
    job: Uuid,
}

impl House {
    fn pretend() -> House {
        let dir = tempfile::tempdir().unwrap();
        let app = App::open(dir.path()).unwrap();
        let job = demo::book(&app).unwrap().job;
        House { dir, app, job }
    }

    fn makes(&self, edition: Edition) -> PacketsView {
        let job = self.job;
        match self.app.handle(JobFileRequest::MakePacket { job, edition }) {
            Reply::Packets(view) => *view,
            other => panic!("{other:?}"),
        }
    }

    fn lists(&self) -> PacketsView {
        match self.app.handle(JobFileRequest::Packets { job: self.job }) {
            Reply::Packets(view) => *view,
            other => panic!("{other:?}"),
        }
    }

    /// Another reading: one leg more is said to be out of reach.
    fn books_on(&self) {
        let leg = 1;
        let end = eavebook_core::book::kinds::EndKind::Wall;
        let job = self.job;
        let told = self.app.handle(PlanRequest::LegEnd { job, leg, end });
        assert!(matches!(told, Reply::Job(_)), "{told:?}");
    }

    fn files(&self) -> Vec<PathBuf> {
        let there = std::fs::read_dir(self.dir.path().join("packets")).unwrap();
        let mut files: Vec<PathBuf> = there.map(|file| file.unwrap().path()).collect();
        files.sort();
        files
    }

    fn the_one_file(&self) -> (PathBuf, Vec<u8>) {
        let [file] = self.files().try_into().unwrap();
        let bytes = std::fs::read(&file).unwrap();
        (file, bytes)
    }
}

#[test]
fn a_private_photo_is_in_no_packet_and_the_list_says_that_one_is_left_out() {
    let house = House::pretend();
    let (job, word) = (house.job, PhotoWord::Private { on: true });
    let Reply::Job(seen) = house.app.handle(TodayRequest::Job { job }) else {
        unreachable!()
    };
    let private = &seen.photos[0];
    let photos = vec![private.entry];
    let said = house
        .app
        .handle(WalkRoundRequest::PhotoFacts { job, photos, word });
    assert!(matches!(said, Reply::Job(_)), "{said:?}");
    for edition in [Edition::Owner, Edition::Crew, Edition::Firm] {
        let made = house.makes(edition);
        let name = made.packets[0].file.as_ref().unwrap();
        let path = house.dir.path().join("packets").join(name);
        let read = |file: &str| {
            let bytes = eavebook_packet::file_in(&path, file, 1 << 20).unwrap();
            String::from_utf8(bytes).unwrap()
        };
        let list = read("data/packet.json");
        assert!(
            list.contains("\"private_left_out\": 1"),
            "{edition}: {list}"
        );
        // Neither as it was taken, under its hash, nor a copy named by it.
        let sums = read("manifest-sha256.txt");
        assert!(!sums.contains(&private.sha256[..8]), "{edition}: {sums}");
        let other = &seen.photos[1].sha256[..8];
        assert!(sums.contains(other), "{edition}: {sums}");
    }
}

#[test]
fn a_packet_made_is_whole_beside_the_book_and_stands_first_in_the_list() {
    let house = House::pretend();
    assert_eq!(house.lists().packets, []);
    let told = house.makes(Edition::Owner);
    let packet = &told.packets[0];
    assert_eq!(told.made.as_ref(), Some(&packet.packet));
    assert_eq!(packet.title, "Owner, version 1");
    let open = packet.open.as_deref().unwrap();
    assert_eq!(open, format!("{} open", packet.not_known.len()));
    let (file, _) = house.the_one_file();
    assert_eq!(
        packet.file.as_deref(),
        file.file_name().and_then(|name| name.to_str())
    );
    let proved = eavebook_packet::check(&file).unwrap();
    assert_eq!((proved.id, proved.job), (packet.packet.clone(), house.job));
    let groups: Vec<&str> = packet.papers.iter().map(|group| &*group.title).collect();
    assert!(
        groups.starts_with(&["Start here", "Papers", "Plan"]),
        "{groups:?}"
    );
}

#[test]
fn made_again_with_nothing_booked_since_it_is_the_same_version_and_the_same_bytes() {
    let house = House::pretend();
    let first = house.makes(Edition::Owner);
    let (file, bytes) = house.the_one_file();
    let second = house.makes(Edition::Owner);
    assert_eq!(second, first);
    assert_eq!(house.the_one_file(), (file.clone(), bytes.clone()));
    // Also where its file was lost, and its papers are set once more.
    std::fs::remove_file(&file).unwrap();
    assert_eq!(house.lists().packets[0].file, None);
    assert_eq!(house.makes(Edition::Owner), first);
    assert_eq!(house.the_one_file(), (file, bytes));
}

#[test]
fn after_a_booking_the_next_version_names_the_one_before_and_the_old_one_comes_back_as_it_was() {
    let house = House::pretend();
    let first = house.makes(Edition::Owner).packets[0].clone();
    let (file, bytes) = house.the_one_file();
    std::fs::remove_file(&file).unwrap();
    house.books_on();
    let told = house.makes(Edition::Owner);
    assert_eq!(told.packets.len(), 2);
    let second = &told.packets[0];
    assert_eq!((second.version, first.version), (2, 1));
    assert_ne!(second.packet, first.packet);
    assert!(
        second
            .follows
            .as_ref()
            .unwrap()
            .en
            .starts_with("Follows version 1.")
    );

    let job = house.job;
    let old = house
        .app
        .packet(job, Edition::Owner, Wanted::Version(1))
        .unwrap();
    assert_eq!((old.id, &old.path), (first.packet, &file));
    assert_eq!(std::fs::read(old.path).unwrap(), bytes);
    let never = house
        .app
        .packet(job, Edition::Owner, Wanted::Version(9))
        .unwrap_err();
    assert_eq!(
        never.to_string(),
        "No version 9 of the owner's packet was made of this job. Leave the version away to make \
         the next one."
    );
}

#[test]
fn keys_are_answered_while_the_papers_are_set() {
    let house = House::pretend();
    let done = AtomicBool::new(false);
    let answered = std::thread::scope(|both| {
        let making = both.spawn(|| {
            let told = house.makes(Edition::Firm);
            done.store(true, Ordering::SeqCst);
            told
        });
        let mut answered = 0;
        let job = house.job;
        while !done.load(Ordering::SeqCst) {
            let told = house.app.handle(FieldBookRequest::OpenPad {
                job,
                thing: None,
                blind: false,
            });
            let Reply::Job(told) = told else {
                panic!("{told:?}")
            };
            let press = told.pad.open.unwrap().press;
            let key = Key::Digit { digit: 4 };
            let since_ms = None;
            let pressed = house.app.handle(FieldBookRequest::Press {
                job,
                press,
                key,
                since_ms,
            });
            assert!(matches!(pressed, Reply::Pad(_)), "{pressed:?}");
            answered += 1;
        }
        assert_eq!(making.join().unwrap().packets.len(), 1);
        answered
    });
    println!("{answered} keys answered while a packet was made");
    // One or two could slip in before and after a run that holds the book.
    assert!(answered > 3, "{answered}");
}

#[test]
fn two_who_ask_at_once_get_the_same_packet() {
    let house = House::pretend();
    let [one, other] = std::thread::scope(|both| {
        [(); 2]
            .map(|()| both.spawn(|| house.makes(Edition::Crew)))
            .map(|making| making.join().unwrap())
    });
    assert_eq!(one.made, other.made);
    assert_eq!(house.lists().packets.len(), 1);
}

#[test]
fn a_packet_that_no_entry_names_is_swept_when_the_book_is_opened() {
    let house = House::pretend();
    house.makes(Edition::Crew);
    let (file, _) = house.the_one_file();
    let orphan = file.with_file_name("somewhere-v1-crew-0123456789ab.zip");
    std::fs::copy(&file, &orphan).unwrap();
    let House { dir, app, job } = house;
    drop(app);
    let house = House {
        app: App::open(dir.path()).unwrap(),
        dir,
        job,
    };
    assert_eq!(house.the_one_file().0, file);
    assert!(house.lists().packets[0].file.is_some());
}

#[test]
fn a_freeze_changes_nothing_of_the_job_and_undo_passes_it_by() {
    let house = House::pretend();
    let Reply::Job(before) = house.app.handle(TodayRequest::Job { job: house.job }) else {
        panic!()
    };
    house.makes(Edition::Owner);
    let Reply::Job(after) = house.app.handle(TodayRequest::Job { job: house.job }) else {
        panic!()
    };
    assert_eq!(after, before);
}

#[test]
fn a_job_that_was_only_begun_has_a_packet_that_says_what_is_not_known() {
    let person = Person::begins();
    let job = person.job;
    let edition = Edition::Owner;
    let told = person.says(JobFileRequest::MakePacket { job, edition });
    let Reply::Packets(view) = told else {
        panic!("{told:?}")
    };
    assert!(!view.packets[0].not_known.is_empty());
    let nowhere = Uuid::nil();
    let said = person.is_refused(JobFileRequest::MakePacket {
        job: nowhere,
        edition,
    });
    assert!(said.starts_with("This book has no such job."), "{said}");
}

#[test]
fn a_packet_that_cannot_be_written_is_said_in_a_sentence_and_the_book_is_as_it_was() {
    let house = House::pretend();
    // A file stands where the folder should.
    std::fs::write(house.dir.path().join("packets"), "in the way").unwrap();
    let edition = Edition::Owner;
    let job = house.job;
    let Reply::Refused(said) = house
        .app
        .handle(JobFileRequest::MakePacket { job, edition })
    else {
        panic!()
    };
    assert!(said.en.contains("allow writing there"), "{}", said.en);
    assert_eq!(house.lists().packets, []);
}

#[test]
fn to_whom_a_packet_goes_is_booked_once_and_changes_no_packet() {
    let house = House::pretend();
    let sends = |to: &str, after: u32| {
        house.app.handle(JobFileRequest::Send {
            job: house.job,
            packet: None,
            to: to.to_owned(),
            after,
        })
    };
    let Reply::Refused(said) = sends("the owner", 0) else {
        panic!()
    };
    assert_eq!(said.en, "There is no packet to send yet. Make one first.");
    let made = house.makes(Edition::Owner);
    let Reply::Refused(said) = sends("  ", 0) else {
        panic!()
    };
    assert!(said.en.starts_with("To whom?"), "{}", said.en);
    for _ in 0..2 {
        let told = sends(" the owner ", 0);
        assert!(matches!(told, Reply::Packets(_)), "{told:?}");
    }
    let listed = house.lists();
    let [send] = listed.sends.as_slice() else {
        panic!("{:?}", listed.sends)
    };
    assert_eq!(
        (send.to.as_str(), send.stage),
        ("the owner", SendStage::Waiting)
    );
    assert_eq!(send.title, "Owner, version 1");
    assert_eq!(listed.sending.en, "Waiting to send: 1");

    let came = JobFileRequest::SendCame {
        job: house.job,
        send: send.send,
        stage: SendStage::HandedOn,
    };
    for _ in 0..2 {
        let told = house.app.handle(came.clone());
        assert!(matches!(told, Reply::Packets(_)), "{told:?}");
    }
    let listed = house.lists();
    assert_eq!(listed.sends[0].stage, SendStage::HandedOn);
    assert!(listed.sends[0].words.en.starts_with("Handed on "));
    // Nothing of the house was booked: it is the same packet still.
    assert_eq!(
        house.makes(Edition::Owner).packets.len(),
        made.packets.len()
    );
    assert_eq!(house.makes(Edition::Owner).made, made.made);
}

//! Files carried by hand, as the page has them: piece by piece in, whole out.

use crate::person::{ADDRESS, Person};
use eavebook_app::reply::{
    BookCopyView, CarriedView, CopiesReply, JobView, Reply, Sentence, State,
};
use eavebook_app::request::{Edition, FieldBookRequest, JobFileRequest, TodayRequest};
use eavebook_app::{AboutPhoto, AboutPiece};
use eavebook_core::book::kinds::PhotoFrom;
use std::io::Read;
use uuid::Uuid;

const JPEG: &[u8] = b"\xff\xd8\xff\xe0 a drawn picture";
/// Enough for several pieces of a small file.
const PIECE: usize = 10_000;

/// A phone at a house: two legs and a photo.
fn a_phone() -> Person {
    let phone = Person::begins();
    phone.walks("40' out 20'");
    let kept = phone.app().keep_photo(JPEG, &about(&phone));
    assert!(matches!(kept, Reply::Job(_)), "{kept:?}");
    phone
}

fn about(person: &Person) -> AboutPhoto {
    AboutPhoto {
        job: person.job,
        of: None,
        from: PhotoFrom::File,
        heading: None,
        tilt: None,
        place: None,
        distance: None,
        said_aloud: false,
    }
}

fn copy_of(person: &Person) -> (BookCopyView, Vec<u8>) {
    let Reply::Copies(CopiesReply::BookCopy(copy)) = person.app().make_copy() else {
        panic!()
    };
    let mut bytes = Vec::new();
    let mut file = person.app().take_copy(copy.file).unwrap();
    file.read_to_end(&mut bytes).unwrap();
    (copy, bytes)
}

/// Carries bytes in, each piece said twice as where a reply was lost; gives the last reply.
fn carries(person: &Person, bytes: &[u8]) -> Reply {
    let file = Uuid::new_v4();
    let mut told = None;
    for (at, piece) in bytes.chunks(PIECE).enumerate() {
        let about = AboutPiece {
            file,
            at: (at * PIECE) as u64,
            whole: bytes.len() as u64,
        };
        let first = person.app().carry_in(piece, about);
        let again = person.app().carry_in(piece, about);
        if !matches!(first, Reply::Refused(_)) {
            assert_eq!(first, again, "said twice it is answered the same");
        }
        told = Some(first);
    }
    told.unwrap()
}

fn brings(person: &Person, bytes: &[u8]) -> String {
    match carries(person, bytes) {
        Reply::Copies(CopiesReply::Carried(CarriedView { said: Some(said) })) => said.en,
        other => panic!("{other:?}"),
    }
}

fn is_refused(person: &Person, bytes: &[u8]) -> Sentence {
    match carries(person, bytes) {
        Reply::Refused(said) => said,
        other => panic!("{other:?}"),
    }
}

/// Each reading by its entry, value and state: whose it was is told otherwise on each device.
fn read_in(job: &JobView) -> Vec<(Uuid, &str, State)> {
    let stories = job.readings.iter().flat_map(|thing| &thing.story);
    stories
        .map(|told| (told.entry, told.value.as_str(), told.state))
        .collect()
}

fn of_the_phone(office: &Person, phone: &Person) -> Box<JobView> {
    office.asks(TodayRequest::Job { job: phone.job })
}

#[test]
fn a_copy_of_a_phones_book_brought_into_another_that_is_open_shows_its_job_and_photo_at_once() {
    let phone = a_phone();
    let (copy, bytes) = copy_of(&phone);
    assert!(copy.name.starts_with("field-book-20") && copy.name.ends_with(".book"));
    // The job, two legs, a corner, a photo.
    assert_eq!(
        copy.said.en,
        format!(
            "{} holds 5 entries, 1 photo, 0 packets. It is a second copy once it lies on another machine.",
            copy.name
        )
    );
    let office = Person::begins();
    assert_eq!(
        brings(&office, &bytes),
        format!("Brought in: 5 entries and 1 photo of {ADDRESS}.")
    );
    let there = of_the_phone(&office, &phone);
    assert_eq!(there.photos.len(), 1);
    assert_eq!(read_in(&there), read_in(&phone.looks()));
    let kept = office.app().photo(&there.photos[0].sha256).unwrap();
    assert_eq!(kept.bytes, JPEG);
    assert_eq!(office.today().stops.len(), 2);
    assert_eq!(
        brings(&office, &bytes),
        format!("Nothing new: 5 entries and 1 photo of {ADDRESS} were here already.")
    );
    // What came can be worked on, and what is booked here goes the same way back.
    office.asks(FieldBookRequest::Strike {
        job: phone.job,
        entry: there.readings[0].story[0].entry,
        reason: None,
    });
    let (_, back) = copy_of(&office);
    assert_eq!(
        brings(&phone, &back),
        format!(
            "Brought in: 2 entries of 2 jobs: {ADDRESS}; {ADDRESS}. 5 entries and 1 photo were here already."
        )
    );
    assert_eq!(
        read_in(&phone.looks()),
        read_in(&of_the_phone(&office, &phone))
    );
}

#[test]
fn the_firms_packet_of_a_job_comes_in_like_a_copy_and_the_owners_is_refused_in_words() {
    let phone = a_phone();
    let packet = |edition| {
        let asked = JobFileRequest::MakePacket {
            job: phone.job,
            edition,
        };
        let Reply::Packets(packets) = phone.says(asked) else {
            panic!()
        };
        let file = phone.app().packet_file(&packets.made.unwrap(), None);
        file.unwrap().bytes
    };
    let office = Person::begins();
    assert_eq!(
        is_refused(&office, &packet(Edition::Owner)).en,
        "Nothing was brought: the packet is for \"owner\" and holds no entries: bring the firm's packet of that job."
    );
    let firms = packet(Edition::Firm);
    assert_eq!(
        brings(&office, &firms),
        format!("Brought in: 5 entries and 1 photo of {ADDRESS}.")
    );
    assert_eq!(of_the_phone(&office, &phone).photos.len(), 1);
}

#[test]
fn a_file_that_is_damaged_cut_or_of_another_sort_is_refused_and_changes_nothing() {
    let phone = a_phone();
    let (_, bytes) = copy_of(&phone);
    let office = Person::begins();
    let mut changed = bytes.clone();
    changed[bytes.len() / 2] ^= 1;
    let altered = "This file is no whole backup (its bytes are not those that were written): \
                   nothing was restored; take another copy of it.";
    assert_eq!(is_refused(&office, &changed).en, altered);
    assert_eq!(is_refused(&office, &bytes[..bytes.len() - 1]).en, altered);
    let other = is_refused(&office, JPEG);
    assert_eq!(
        (other.code.as_str(), other.en.as_str()),
        (
            "not_brought",
            "This file is no whole backup (it does not begin as a backup does): nothing was \
             restored; take another copy of it."
        )
    );
    // The pieces before this one were lost, as when the program was started again meanwhile.
    let lost = AboutPiece {
        file: Uuid::new_v4(),
        at: 10,
        whole: 20,
    };
    let Reply::Refused(said) = office.app().carry_in(b"0123456789", lost) else {
        panic!()
    };
    assert_eq!(said.code, "file_cut_off");
    assert_eq!(office.today().stops.len(), 1);
    let left = std::fs::read_dir(office.dir().join("carried")).unwrap();
    assert_eq!(left.count(), 0);
}

#[test]
fn a_copy_is_fetched_once_and_the_one_before_it_is_not_kept() {
    let phone = a_phone();
    let made = || match phone.app().make_copy() {
        Reply::Copies(CopiesReply::BookCopy(copy)) => copy.file,
        other => panic!("{other:?}"),
    };
    let (first, second) = (made(), made());
    assert!(phone.app().take_copy(first).is_none());
    assert!(phone.app().take_copy(second).is_some());
    assert!(phone.app().take_copy(second).is_none());
    let left = std::fs::read_dir(phone.dir().join("carried")).unwrap();
    assert_eq!(left.count(), 0);
}

#[test]
fn a_copy_saved_in_a_folder_says_where_it_lies_and_can_be_brought() {
    let phone = a_phone();
    let folder = tempfile::tempdir().unwrap();
    let said = phone.app().save_copy(&folder.path().join("saved")).en;
    let (file, rest) = said.split_once(" holds ").unwrap();
    assert!(rest.starts_with("5 entries, 1 photo, 0 packets."), "{rest}");
    let office = Person::begins();
    let bytes = std::fs::read(file).unwrap();
    assert!(brings(&office, &bytes).starts_with("Brought in: 5 entries"));
    // Where a file lies, nothing can be saved.
    let refused = phone.app().save_copy(std::path::Path::new(file));
    assert_eq!(refused.code, "not_copied");
}

#[test]
fn what_was_on_its_way_when_the_program_ended_is_gone_when_it_is_opened_again() {
    let mut phone = a_phone();
    assert!(matches!(
        phone.app().make_copy(),
        Reply::Copies(CopiesReply::BookCopy(_))
    ));
    assert!(phone.dir().join("carried").exists());
    phone.starts_the_program_again();
    assert!(!phone.dir().join("carried").exists());
    assert_eq!(phone.looks().photos.len(), 1);
}

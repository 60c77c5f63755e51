use crate::person::{Person, leg, value};
use eavebook_app::App;
use eavebook_app::reply::Reply;
use eavebook_app::request::{Key, TodayRequest};
use eavebook_core::book::kinds::{Thing, Turn};

#[test]
fn half_typed_slots_come_back_as_they_were() {
    let mut person = Person::begins();
    person.opens(1);
    person.types("42' 7\"");
    let before = person.looks().pad;
    person.starts_the_program_again();
    assert_eq!(person.looks().pad, before);
    person.presses(Key::Eighths { eighths: 4 });
    assert_eq!(value(leg(&person.books(), 1)), "42 ft 7 1/2 in");
}

#[test]
fn a_pending_corner_and_read_back_come_back() {
    let mut person = Person::begins();
    let before = person.reads(1, "42'");
    person.starts_the_program_again();
    let after = person.looks();
    assert_eq!(after.pad, before.pad);
    assert_eq!(after.pad.corner_after, Some(1));
    assert_eq!(after.pad.read_back.unwrap().value, "42 ft");
    let job = person.turns(1, Turn::Outside);
    assert_eq!(job.pad.open.unwrap().thing, Thing::Leg { leg: 2 });
}

#[test]
fn undo_and_redo_work_after_a_restart() {
    let mut person = Person::begins();
    person.reads(1, "42'");
    person.starts_the_program_again();
    assert!(leg(&person.undoes(), 1).value.is_none());
    person.starts_the_program_again();
    assert_eq!(value(leg(&person.redoes(), 1)), "42 ft");
}

#[test]
fn a_blind_reading_stays_blind() {
    let mut person = Person::begins();
    person.reads(1, "42'");
    person.opens_blind(1);
    person.starts_the_program_again();
    let job = person.looks();
    assert!(job.pad.open.as_ref().unwrap().blind);
    assert!(!serde_json::to_string(&job).unwrap().contains("42 ft"));
}

#[test]
fn the_same_job_says_the_same_after_a_restart() {
    let mut person = Person::begins();
    person.walks("60' out 30' out 60' out 30'");
    let before = person.slopes(1, 6.0);
    person.starts_the_program_again();
    let after = person.looks();
    assert_eq!(Reply::Job(after), Reply::Job(before));
}

#[test]
fn a_second_program_on_the_same_book_is_told_to_wait() {
    let person = Person::begins();
    let refused = App::open(person.dir()).unwrap_err().to_string();
    assert!(refused.contains("is open in another program"), "{refused}");
    assert_eq!(
        person.is_refused(TodayRequest::Job {
            job: uuid::Uuid::nil()
        }),
        "This book has no such job. Go to Today and open one of those there."
    );
}

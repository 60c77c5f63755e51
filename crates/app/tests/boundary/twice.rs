//! Every request said twice does once what it does.

use crate::person::{Person, leg};
use eavebook_app::reply::{JobView, Reply};
use eavebook_app::request::{FieldBookRequest, Key, PlanRequest, Request, TodayRequest};
use eavebook_core::book::kinds::{EndKind, PitchRead, Thing, Turn};

/// Says it twice; both replies must be the same.
fn twice(person: &Person, request: impl Into<Request>) -> Box<JobView> {
    let request = request.into();
    let first = person.asks(request.clone());
    let second = person.says(request.clone());
    assert_eq!(second, Reply::Job(first.clone()), "{request:?}");
    first
}

#[test]
fn a_job_begun_twice_is_one_job_until_something_is_booked() {
    let person = Person::begins();
    let again = TodayRequest::StartJob {
        address: format!("  {} ", crate::person::ADDRESS),
    };
    assert_eq!(person.asks(again.clone()).job, person.job);
    person.reads(1, "40'");
    assert_ne!(person.asks(again).job, person.job);
}

#[test]
fn a_key_said_twice_is_one_key_and_a_booking_one_reading() {
    let person = Person::begins();
    let press = person.opens(1).pad.open.unwrap().press;
    let key = |at, key| FieldBookRequest::Press {
        job: person.job,
        press: at,
        key,
        since_ms: None,
    };
    for (at, one) in (press..).zip([Key::Digit { digit: 4 }, Key::Digit { digit: 2 }, Key::Whole]) {
        let first = person.says(key(at, one));
        assert_eq!(person.says(key(at, one)), first);
    }
    let job = twice(&person, key(press + 3, Key::BookIt));
    assert_eq!(leg(&job, 1).story.len(), 1);
    person.turns(1, Turn::Outside);
    // Late, when the keypad is open for the next leg: nothing is typed there.
    person.says(key(press + 3, Key::BookIt));
    person.says(key(press, Key::Digit { digit: 4 }));
    assert_eq!(person.looks().pad.open.unwrap().slots[0].typed, "");
}

#[test]
fn corner_right_strike_undo_redo_twice() {
    let person = Person::begins();
    let reading = person.reads(1, "40'").pad.read_back.unwrap().reading;
    let job = person.job;
    twice(&person, FieldBookRequest::Right { job, reading });
    twice(
        &person,
        FieldBookRequest::Corner {
            job,
            after_leg: 1,
            turn: Turn::Outside,
        },
    );
    twice(
        &person,
        FieldBookRequest::Strike {
            job,
            entry: reading,
            reason: None,
        },
    );
    let strike = person.looks().undo.unwrap().entry;
    let undone = twice(&person, FieldBookRequest::Undo { job, entry: strike });
    assert_eq!(leg(&undone, 1).story.len(), 1);
    let entry = undone.redo.unwrap().entry;
    twice(&person, FieldBookRequest::Redo { job, entry });
}

#[test]
fn ends_slopes_and_legs_out_of_reach_twice() {
    let person = Person::begins();
    person.walks("60' out 30' out 60' out");
    let job = person.job;
    let thing = Thing::Leg { leg: 4 };
    twice(
        &person,
        FieldBookRequest::CannotGet {
            job,
            thing,
            reason: None,
        },
    );
    twice(
        &person,
        PlanRequest::LegEnd {
            job,
            leg: 2,
            end: EndKind::Gable,
        },
    );
    let read = PitchRead::Phone {
        degrees: 26.6,
        reversed: false,
    };
    let told = twice(&person, PlanRequest::Pitch { job, leg: 1, read });
    let face = told.faces.iter().find(|face| face.leg == 1).unwrap();
    assert_eq!(face.face.story.len(), 1);
    twice(
        &person,
        PlanRequest::Pitch {
            job,
            leg: 3,
            read: PitchRead::SameAs { leg: 1 },
        },
    );
}

#[test]
fn an_undo_of_what_is_not_the_last_act_is_refused() {
    let person = Person::begins();
    let entry = person.reads(1, "40'").pad.read_back.unwrap().reading;
    person.turns(1, Turn::Outside);
    assert_eq!(
        person.is_refused(FieldBookRequest::Undo {
            job: person.job,
            entry
        }),
        "Something else was done since. Look at what Undo names now."
    );
}

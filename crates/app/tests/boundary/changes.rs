//! What turns up once the old roof is off.

use crate::person::Person;
use eavebook_app::reply::{JobView, Reply, State};
use eavebook_app::request::{
    ArriveRequest, FieldBookRequest, JobFileRequest, PlanRequest, Request, TakeoffRequest,
};
use eavebook_core::book::kinds::VisitNote;

fn rectangle() -> Person {
    let person = Person::begins();
    person.walks("40' out 20' out 40' out 20'");
    person
}

fn change(person: &Person, leg: Option<u32>, sheets: u32, consent: bool) -> JobFileRequest {
    JobFileRequest::AddChange {
        job: person.job,
        number: person.looks().changes.next,
        leg,
        sheets,
        consent,
    }
}

fn refused(person: &Person, request: impl Into<Request>) -> String {
    match person.says(request) {
        Reply::Refused(why) => why.en,
        other => panic!("{other:?}"),
    }
}

fn about(job: &JobView) -> &str {
    &job.changes.changes[0].about
}

#[test]
fn three_bad_sheets_under_a_face_are_booked_at_the_price_of_then_with_who_agreed() {
    let person = rectangle();
    assert_eq!(
        person.looks().changes.price.en,
        "A sheet of deck, laid: $58.00."
    );
    person.asks(ArriveRequest::Visit {
        job: person.job,
        note: VisitNote::Here {
            name: "the owner".to_owned(),
            may_say_yes: true,
        },
    });
    let booked = person.asks(change(&person, Some(1), 3, true));
    let one = &booked.changes.changes[0];
    assert_eq!((one.thing.as_str(), one.state), ("change 1", State::Agreed));
    assert_eq!(
        about(&booked),
        "3 deck sheets under Front, $58.00 a sheet laid, agreed by the owner, no photo."
    );
    assert_eq!(booked.changes.next, 2);

    // A later price changes nothing that was agreed.
    person.says(TakeoffRequest::SetRate {
        job: person.job,
        key: "deck.price".to_owned(),
        value: "90.00".to_owned(),
    });
    let later = person.looks();
    assert_eq!(about(&later), about(&booked));
    assert_eq!(later.changes.price.en, "A sheet of deck, laid: $112.00.");
}

#[test]
fn said_twice_it_is_one_and_struck_it_stays_in_its_story() {
    let person = rectangle();
    let request = change(&person, Some(1), 2, false);
    person.asks(request.clone());
    let job = person.asks(request);
    let [one] = job.changes.changes.as_slice() else {
        panic!("{:?}", job.changes)
    };
    assert_eq!(one.state, State::ReadOnce);
    let job = person.asks(FieldBookRequest::Strike {
        job: person.job,
        entry: one.story[0].entry,
        reason: None,
    });
    let struck = &job.changes.changes[0];
    assert_eq!(struck.state, State::Struck);
    assert_eq!(struck.story[0].value, "2 deck sheets");
    // Its number is not given again.
    assert_eq!(job.changes.next, 2);
}

#[test]
fn a_change_lacks_a_face_or_a_count_in_so_many_words() {
    let person = rectangle();
    let before = person.looks();
    assert_eq!(
        refused(&person, change(&person, None, 3, true)),
        "Under which face? Choose it, then book."
    );
    assert_eq!(
        refused(&person, change(&person, Some(1), 0, true)),
        "0 is no count of sheets. Count them with one more and one less, 1 to 999."
    );
    assert_eq!(
        refused(&person, change(&person, Some(9), 1, true)),
        refused(
            &person,
            PlanRequest::Pitch {
                job: person.job,
                leg: 9,
                read: eavebook_core::book::kinds::PitchRead::NotGot
            }
        )
    );
    assert_eq!(person.looks().changes, before.changes);
}

//! A phone laid on a slope: held still, captured, turned end for end.

use crate::person::{Person, face};
use eavebook_app::reply::{HoldWord, JobView, PlanReply, Reply, State};
use eavebook_app::request::{PlanRequest, TiltSample};
use eavebook_core::book::kinds::{EndKind, PitchRead};

/// Two seconds of looks at one tilt.
fn still(beta: f64) -> Vec<TiltSample> {
    (0..=40)
        .map(|i| TiltSample {
            at_ms: 50.0 * f64::from(i),
            beta,
        })
        .collect()
}

fn holds(person: &Person, looks: Vec<TiltSample>) -> (HoldWord, Option<String>) {
    match person.says(PlanRequest::HoldStill { looks }) {
        Reply::Plan(PlanReply::Hold(held)) => (held.hold, held.degrees),
        other => panic!("{other:?}"),
    }
}

fn captures(person: &Person, looks: Vec<TiltSample>, reversed: bool) -> Box<JobView> {
    let after = face(&person.looks(), 1).slopes_before;
    person.asks(PlanRequest::CapturePitch {
        job: person.job,
        leg: 1,
        looks,
        reversed,
        after,
    })
}

fn rectangle() -> Person {
    let person = Person::begins();
    person.walks("40' out 20' out 40' out 20'");
    person
}

#[test]
fn two_still_seconds_are_still_and_nothing_is_booked_by_looking() {
    let person = rectangle();
    assert_eq!(
        holds(&person, still(26.57)),
        (HoldWord::Still, Some("26.6°".to_owned()))
    );
    assert_eq!(holds(&person, still(0.0)).0, HoldWord::Nothing);
    assert_eq!(
        holds(&person, still(26.57)[..10].to_vec()).0,
        HoldWord::Begun
    );
    assert_eq!(holds(&person, Vec::new()), (HoldWord::Begun, None));
    assert_eq!(face(&person.looks(), 1).face.story, []);
}

#[test]
fn turned_end_for_end_the_mean_is_free_of_what_the_phone_adds_and_both_ways_are_kept() {
    let person = rectangle();
    let job = captures(&person, still(26.57 + 0.6), false);
    let first = face(&job, 1).captured.clone().unwrap();
    assert_eq!((first.degrees.as_str(), first.one_way), ("27.2°", true));
    let job = captures(&person, still(-26.57 + 0.6), true);
    let pair = face(&job, 1).captured.clone().unwrap();
    assert_eq!((pair.degrees.as_str(), pair.one_way), ("26.6°", false));
    assert_eq!(pair.in_12, "6.0 in 12, near 6 in 12");
    assert_eq!(pair.spoken, "two six point six degrees");
    assert_eq!(
        pair.zero_error.unwrap().en,
        "27.2° and 26.0°: this phone reads 0.6° high, and the mean is free of it."
    );
    let raw: Vec<&str> = face(&job, 1)
        .face
        .story
        .iter()
        .map(|told| told.value.as_str())
        .collect();
    assert_eq!(raw, ["26.0°", "27.2°"]);
}

#[test]
fn a_capture_said_twice_books_once_and_two_places_that_read_alike_are_two() {
    let person = rectangle();
    let same = PlanRequest::CapturePitch {
        job: person.job,
        leg: 1,
        looks: still(26.6),
        reversed: false,
        after: 0,
    };
    person.asks(same.clone());
    assert_eq!(face(&person.asks(same), 1).face.story.len(), 1);
    let job = captures(&person, still(26.6), false);
    assert_eq!(face(&job, 1).face.story.len(), 2);
    assert_eq!(face(&job, 1).face.state, State::Agreed);
}

#[test]
fn a_phone_that_tells_nothing_is_refused_and_not_got_is_an_answer() {
    let person = rectangle();
    for looks in [Vec::new(), still(0.0)] {
        let refused = person.is_refused(PlanRequest::CapturePitch {
            job: person.job,
            leg: 1,
            looks,
            reversed: false,
            after: 0,
        });
        assert_eq!(
            refused,
            "This phone does not report its tilt. Read the pitch by level and tape, or record it as not got."
        );
    }
    let read = PitchRead::NotGot;
    let job = person.asks(PlanRequest::Pitch {
        job: person.job,
        leg: 1,
        read,
    });
    assert_eq!(face(&job, 1).face.state, State::CannotGet);
    assert_eq!(face(&job, 1).captured, None);
    assert!(face(&job, 1).face.about.ends_with("looked for and not got"));
    assert_eq!(face(&person.undoes(), 1).face.state, State::NotLooked);
}

#[test]
fn a_pitch_not_got_at_a_gable_leaves_it_a_gable() {
    let person = rectangle();
    person.asks(PlanRequest::LegEnd {
        job: person.job,
        leg: 2,
        end: EndKind::Gable,
    });
    let job = person.asks(PlanRequest::Pitch {
        job: person.job,
        leg: 2,
        read: PitchRead::NotGot,
    });
    assert_eq!(face(&job, 2).end, Some(EndKind::Gable));
}

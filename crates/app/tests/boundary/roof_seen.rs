use crate::person::{Person, face, total};
use eavebook_app::reply::{JobView, NextAct, State};
use eavebook_app::request::{FieldBookRequest, PlanRequest};
use eavebook_core::book::kinds::Thing;

/// 40 by 20 within an inch, read once, 6 in 12 all round.
fn hip_roof() -> Person {
    let person = Person::begins();
    person.walks("40' out 20' out 40' out 20'");
    for leg in 1..=4 {
        person.slopes(leg, 6.0);
    }
    person
}

fn taps(person: &Person, leg: u32, answer: &str) -> Box<JobView> {
    let job = person.looks();
    let asks = &face(&job, leg).seen.asks;
    let mut choices = asks.iter().flat_map(|ask| &ask.choices);
    let choice = choices.find(|choice| choice.name == answer).unwrap();
    person.asks(choice.says.clone())
}

fn said(job: &JobView) -> Vec<&str> {
    job.cautions.iter().map(|said| said.en.as_str()).collect()
}

/// What comes of each thing seen over a leg.
fn codes(job: &JobView, leg: u32) -> Vec<&str> {
    let judged = face(job, leg).seen.judged.iter();
    judged.map(|said| said.code.as_str()).collect()
}

fn speaks_of_what_was_seen(job: &JobView) -> bool {
    let mut codes = job.cautions.iter().map(|said| said.code.as_str());
    codes.any(|code| code.starts_with("seen_"))
}

#[test]
fn a_gable_seen_where_a_hip_is_drawn_is_flagged_everywhere_and_moves_nothing() {
    let person = hip_roof();
    let before = total(&person.looks(), "Roof area").0.to_owned();
    let job = taps(&person, 2, "A gable");
    assert_eq!(total(&job, "Roof area").0, before);
    let judged = &face(&job, 2).seen.judged;
    assert_eq!(judged.len(), 1);
    assert_eq!(judged[0].code, "seen_flagged");
    assert!(
        judged[0].en.starts_with(
            "Leg 2 was seen as a gable and is drawn as a slope: as seen, the area stays,"
        ),
        "{}",
        judged[0].en
    );
    assert!(said(&job).contains(&judged[0].en.as_str()));
    let card = job.check.open.iter().find(|card| card.thing == "roof seen");
    let face_2 = NextAct::Open {
        thing: "face 2".to_owned(),
    };
    assert_eq!(card.map(|card| &card.next), Some(&face_2));
}

#[test]
fn what_was_seen_and_struck_is_readable_and_says_no_more() {
    let person = hip_roof();
    let job = taps(&person, 2, "A gable");
    let told = face(&job, 2).face.story.iter();
    let seen = told.clone().find(|told| told.value == "a gable").unwrap();
    let job = person.strikes(seen.entry);
    assert!(face(&job, 2).seen.judged.is_empty());
    assert!(!speaks_of_what_was_seen(&job));
    let told = face(&job, 2).face.story.iter();
    let states: Vec<State> = told
        .filter(|told| told.value == "a gable")
        .map(|told| told.state)
        .collect();
    assert_eq!(states, [State::Struck]);
}

#[test]
fn what_was_seen_as_it_is_drawn_agrees_and_asks_for_no_second_visit() {
    let person = hip_roof();
    taps(&person, 2, "A slope");
    let job = taps(&person, 2, "1 face");
    let codes = codes(&job, 2);
    assert_eq!(codes, ["seen_agrees", "seen_agrees"]);
    assert!(!speaks_of_what_was_seen(&job));
    assert!(job.check.open.iter().all(|card| card.thing != "roof seen"));
}

#[test]
fn the_later_look_over_a_leg_stands_in_the_place_of_the_earlier_and_both_can_be_read() {
    let person = hip_roof();
    taps(&person, 2, "A gable");
    taps(&person, 2, "2 faces");
    let job = taps(&person, 2, "A slope");
    let codes = codes(&job, 2);
    assert_eq!(
        codes,
        ["seen_flagged", "seen_agrees"],
        "faces, then the slope"
    );
    let said_twice = taps(&person, 2, "A slope");
    assert_eq!(
        face(&said_twice, 2).face.story,
        face(&job, 2).face.story,
        "the same said twice books once"
    );
}

#[test]
fn a_ridge_read_lower_than_computed_is_an_item_with_what_would_explain_it() {
    let person = hip_roof();
    assert!(
        person
            .looks()
            .items
            .iter()
            .all(|view| view.item.thing != "ridge height")
    );
    person.asks(FieldBookRequest::OpenPad {
        job: person.job,
        thing: Some(Thing::RidgeHeight),
        blind: false,
    });
    person.types("3' 6\"");
    let job = person.books();
    let ridge = job
        .items
        .iter()
        .find(|view| view.item.thing == "ridge height");
    let about = &ridge.unwrap().item.about;
    assert!(
        about.starts_with(
            "The ridge was seen 3.5 ft over its eaves, lower than the computed 5.0 ft ±"
        ),
        "{about}"
    );
    assert!(about.contains("(4.2 in 12 for 6.0)"), "{about}");
    assert!(said(&job).contains(&about.as_str()));
}

#[test]
fn over_a_leg_that_is_not_there_nothing_is_seen() {
    let person = hip_roof();
    let refused = person.is_refused(PlanRequest::RoofObserved {
        job: person.job,
        leg: 9,
        over: eavebook_core::book::kinds::ObservedOverLeg::Gable,
    });
    assert!(refused.contains("leg 9"), "{refused}");
}

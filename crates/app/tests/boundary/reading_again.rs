use crate::person::{Person, leg, value};
use eavebook_app::reply::{ClosureWord, Reply, State};
use eavebook_app::request::FieldBookRequest;

#[test]
fn while_a_leg_is_read_again_its_value_is_nowhere_in_the_reply() {
    let person = Person::begins();
    person.walks("42'_7_1/2\" out 31' out 42'_6\" out 31'");
    let texts = |reply: &Reply| serde_json::to_string(reply).unwrap();
    let seen = texts(&Reply::Job(person.looks()));
    assert!(seen.contains("42 ft 7 1/2 in"));
    let job = person.opens_blind(1);
    assert!(job.pad.open.as_ref().unwrap().blind);
    let hidden = texts(&Reply::Job(job));
    assert!(!hidden.contains("42 ft 7"), "{hidden}");
    let here = texts(&Reply::Today(person.today()));
    assert!(!here.contains("42 ft 7"), "{here}");
    let found = texts(&Reply::Today(person.searches("leg")));
    assert!(
        found.contains("leg 1") && !found.contains("42 ft 7"),
        "{found}"
    );
}

#[test]
fn a_leg_just_booked_and_read_again_is_hidden_from_undo_and_read_back_too() {
    let person = Person::begins();
    person.reads(1, "42' 7 1/2\"");
    let job = person.opens_blind(1);
    assert_eq!(job.undo.as_ref().unwrap().words, "leg 1");
    assert!(job.pad.read_back.is_none());
    assert!(!serde_json::to_string(&job).unwrap().contains("42 ft"));
}

#[test]
fn two_readings_that_agree_are_both_kept() {
    let person = Person::begins();
    person.reads(1, "42' 7\"");
    let job = person.reads_blind(1, "42' 9\"");
    let read = leg(&job, 1);
    assert_eq!((read.state, read.story.len()), (State::Agreed, 2));
    assert_eq!(value(read), "42 ft 9 in");
    assert!(
        read.story[0]
            .about
            .contains("without sight of an earlier value")
    );
    assert_eq!(job.pad.read_back.unwrap().dispute, None);
}

#[test]
fn a_second_reading_that_differs_asks_for_a_third() {
    let person = Person::begins();
    person.reads(1, "24'");
    let job = person.reads_blind(1, "42'");
    let back = job.pad.read_back.unwrap();
    assert_eq!(
        back.dispute.unwrap().en,
        "The readings of leg 1 differ: 24 ft and 42 ft. Read it a third time from the tape."
    );
    assert_eq!(back.value, "42 ft");
    let job = person.reads_blind(1, "24' 1\"");
    assert_eq!(job.pad.read_back.as_ref().unwrap().dispute, None);
    let kept: Vec<String> = leg(&job, 1)
        .story
        .iter()
        .map(|item| item.value.clone())
        .collect();
    assert_eq!(kept, ["24 ft 1 in", "42 ft", "24 ft"]);
}

#[test]
fn a_struck_reading_stands_again_when_the_strike_is_taken_back() {
    let person = Person::begins();
    person.reads(1, "24'");
    let entry = leg(&person.looks(), 1).story[0].entry;
    let reason = Some("the hook slipped".to_owned());
    let job = person.asks(FieldBookRequest::Strike {
        job: person.job,
        entry,
        reason,
    });
    let struck = &leg(&job, 1).story[0];
    assert_eq!(struck.state, State::Struck);
    assert!(
        struck.about.ends_with(": the hook slipped"),
        "{}",
        struck.about
    );
    assert_eq!(job.undo.unwrap().words, "the strike of leg 1");
    let job = person.undoes();
    assert_eq!(
        (leg(&job, 1).state, value(leg(&job, 1))),
        (State::ReadOnce, "24 ft")
    );
    assert_eq!(job.redo.unwrap().words, "the strike of leg 1");
    let job = person.redoes();
    assert_eq!(leg(&job, 1).state, State::NotLooked);
}

#[test]
fn undo_goes_back_act_by_act_and_redo_comes_forward() {
    let person = Person::begins();
    person.walks("60' out 30'");
    assert_eq!(person.looks().undo.unwrap().words, "leg 2, 30 ft");
    assert_eq!(
        person.undoes().undo.unwrap().words,
        "the corner after leg 1"
    );
    assert_eq!(person.undoes().undo.unwrap().words, "leg 1, 60 ft");
    assert_eq!(person.undoes().undo, None);
    assert_eq!(
        person.redoes().redo.unwrap().words,
        "the corner after leg 1"
    );
    person.redoes();
    let job = person.redoes();
    assert_eq!(job.redo, None);
    assert_eq!(value(leg(&job, 2)), "30 ft");
    person.undoes();
    assert_eq!(person.reads(2, "31'").redo, None);
}

#[test]
fn a_third_reading_tells_which_of_two_was_the_slip() {
    let person = Person::begins();
    let gap = person.walks("50' out 24' out 16' in 12' out 18' out 12' in 16' out 42'");
    assert_eq!(gap.closure.state, ClosureWord::Gap);
    person.reads_blind(8, "24'");
    let job = person.reads_blind(8, "24' 1\"");
    assert_eq!(job.closure.state, ClosureWord::Closes);
    // Nothing is mended by itself: the slip stands until somebody strikes it.
    assert_eq!(leg(&job, 8).state, State::Suspect);
    let slip = leg(&job, 8).story[2].entry;
    assert_eq!(leg(&person.strikes(slip), 8).state, State::Agreed);
}

#[test]
fn when_all_agrees_read_opens_blind_what_gains_most() {
    let person = Person::begins();
    person.walks("60' out 30' out 60' out 30'");
    let read = FieldBookRequest::OpenPad {
        job: person.job,
        thing: None,
        blind: false,
    };
    let open = person.asks(read).pad.open.unwrap();
    assert!(open.blind);
}

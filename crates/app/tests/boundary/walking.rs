use crate::person::{Person, leg, value};
use eavebook_app::reply::{ClosureWord, NextAct, State};
use eavebook_app::request::{FieldBookRequest, SettingsRequest};
use eavebook_core::book::kinds::{Thing, Turn};

#[test]
fn a_rectangle_closes_and_needs_no_corner_after_its_last_leg() {
    let person = Person::begins();
    let job = person.walks("60' out 30' out 60' out 30'");
    assert_eq!(job.closure.state, ClosureWord::Closes);
    assert_eq!(job.closure.words.en, "Closes within 1 in.");
    assert_eq!(job.pad.corner_after, None);
    assert_eq!(job.faces.len(), 4);
    let states: Vec<State> = (1..=4).map(|number| leg(&job, number).state).collect();
    assert_eq!(states, [State::Agreed; 4]);
    assert_eq!(leg(&job, 3).title, "Leg 3, back");
    let about = &leg(&job, 2).about;
    let (met, slip) = about.split_once(". ").unwrap();
    assert_eq!(met, "read once, meets leg 3 at an outside corner");
    assert!(
        slip.starts_with("A slip under 1 ft ") && slip.ends_with(" sq ft."),
        "{slip}"
    );
}

#[test]
fn closing_is_never_called_correct_and_says_what_it_does_not_see() {
    let person = Person::begins();
    let job = person.walks("60' out 30' out 60' out 30'");
    assert_eq!(
        job.closure.more.unwrap().en,
        "It would not show the same slip on both legs of a pair (legs 1 and 3, or 2 and 4), one \
         wrong unit or a stretched tape on every reading, an overhang left out all round or walls \
         out of square."
    );
}

#[test]
fn what_is_left_to_the_start_is_said_after_each_leg() {
    let person = Person::begins();
    let said = |walk: &str| person.walks(walk).closure;
    assert_eq!(person.looks().closure.state, ClosureWord::Open);
    let one = said("40'");
    assert_eq!(one.words.en, "To close: 40 ft along, 0 across.");
    let next = person.turns(1, Turn::Outside);
    assert_eq!(next.pad.open.unwrap().thing, Thing::Leg { leg: 2 });
    let two = person.reads(2, "18' 3\"").closure;
    assert_eq!(two.words.en, "To close: 40 ft along, 18 ft 3 in across.");
    assert_eq!(two.state, ClosureWord::Open);
}

#[test]
fn a_t_house_with_42_booked_for_24_says_the_gap_and_names_the_leg() {
    let person = Person::begins();
    let job = person.walks("50' out 24' out 16' in 12' out 18' out 12' in 16' out 42'");
    assert_eq!(job.closure.state, ClosureWord::Gap);
    assert!(
        job.closure.words.en.contains("18 ft"),
        "{}",
        job.closure.words.en
    );
    let named: Vec<&str> = job
        .closure
        .suspects
        .iter()
        .map(|s| s.title.as_str())
        .collect();
    assert!(named.contains(&"Leg 8") && named.len() <= 2, "{named:?}");
    assert_eq!(leg(&job, 8).state, State::Suspect);
}

#[test]
fn the_leg_that_was_wrong_is_struck_read_again_and_stays_in_the_story() {
    let person = Person::begins();
    person.walks("50' out 24' out 16' in 12' out 18' out 12' in 16' out 42'");
    let wrong = leg(&person.looks(), 8).story[0].entry;
    let struck = person.strikes(wrong);
    assert_eq!(struck.closure.state, ClosureWord::Open);
    assert_eq!(
        struck.you_were_here.unwrap().words.en,
        "Leg 8 struck. Next: read leg 8."
    );
    let job = person.reads(8, "24'");
    assert_eq!(job.closure.words.en, "Closes within 1 in.");
    let story = &leg(&job, 8).story;
    let told: Vec<_> = story
        .iter()
        .map(|item| (item.value.as_str(), item.state))
        .collect();
    assert_eq!(told, [("24 ft", State::Agreed), ("42 ft", State::Struck)]);
    assert!(!story[1].may_strike);
}

#[test]
fn a_leg_out_of_reach_is_worked_out_and_the_loop_is_not_checked() {
    let person = Person::begins();
    person.walks("60' out 30' out 60' out");
    let thing = Thing::Leg { leg: 4 };
    let reason = Some("a hedge".to_owned());
    let job = person.asks(FieldBookRequest::CannotGet {
        job: person.job,
        thing,
        reason,
    });
    assert_eq!(job.closure.state, ClosureWord::NotChecked);
    let worked = leg(&job, 4);
    assert_eq!((worked.state, value(worked)), (State::WorkedOut, "30 ft"));
    assert!(worked.value.as_ref().unwrap().give_or_take.is_some());
    assert!(worked.about.contains("can't be reached: a hedge"));
    assert!(
        job.plan
            .lines
            .iter()
            .any(|line| line.thing == "leg 4" && line.worked_out)
    );
    assert!(job.pad.open.is_none() && job.pad.corner_after.is_none());
}

#[test]
fn walking_with_the_building_on_the_left_is_the_same_house() {
    use eavebook_app::request::Setting;
    use eavebook_core::book::kinds::Side;
    let person = Person::begins();
    person.says(SettingsRequest::Set {
        setting: Setting::BuildingOn(Side::Left),
    });
    let job = person.walks("60' out 30' out 60' out 30'");
    assert_eq!(job.closure.words.en, "Closes within 1 in.");
    assert_eq!(leg(&job, 2).title, "Leg 2, right");
}

#[test]
fn the_last_act_and_the_next_are_said() {
    let person = Person::begins();
    assert!(person.looks().you_were_here.is_none());
    let here = person.reads(1, "40'").you_were_here.unwrap();
    assert_eq!(here.words.en, "Leg 1 booked. Next: the corner after leg 1.");
    assert_eq!(here.next, NextAct::Corner { after_leg: 1 });
    let here = person.turns(1, Turn::Inside).you_were_here.unwrap();
    assert_eq!(
        here.words.en,
        "At the inside corner after leg 1. Next: read leg 2."
    );
    assert_eq!(
        here.next,
        NextAct::Read {
            thing: Thing::Leg { leg: 2 }
        }
    );
}

#[test]
fn the_walkers_side_lies_at_the_foot_of_the_plan() {
    let person = Person::begins();
    person.walks("40' out 20'");
    let plan = person.looks().plan;
    let line = |name: &str| plan.lines.iter().find(|line| line.thing == name).unwrap();
    // Leg 2 is the last walked: it runs to the left along the foot, leg 1 rises behind its start.
    assert_eq!(
        (line("leg 2").from, line("leg 2").to),
        ([0.0, -40.0], [-20.0, -40.0])
    );
    assert_eq!(line("leg 1").from, [0.0, 0.0]);
    assert_eq!(plan.walker, Some([-20.0, -40.0]));
    assert_eq!(plan.to_close, Some([[-20.0, -40.0], [0.0, 0.0]]));
}

#[test]
fn a_corner_taken_back_puts_the_keypad_away_so_that_the_corner_can_be_tapped() {
    let person = Person::begins();
    person.walks("60' out");
    assert!(person.looks().pad.open.is_some());
    let job = person.undoes();
    assert_eq!((job.pad.open, job.pad.corner_after), (None, Some(1)));
}

//! Arriving at a house and driving off: what is allowed, what to beware of, what is still open.

use crate::person::Person;
use eavebook_app::reply::{CheckItem, JobView, NextAct};
use eavebook_app::request::{ArriveRequest, CheckRequest, PlanRequest};
use eavebook_core::book::kinds::{Hazard, Permission, VisitNote};

fn notes(person: &Person, note: VisitNote) -> Box<JobView> {
    person.asks(ArriveRequest::Visit {
        job: person.job,
        note,
    })
}

fn card<'a>(job: &'a JobView, thing: &str) -> Option<&'a CheckItem> {
    job.check.open.iter().find(|item| item.thing == thing)
}

fn allowed(what: Permission, given: bool) -> VisitNote {
    VisitNote::Permission {
        what,
        given,
        by: None,
    }
}

#[test]
fn a_permission_is_kept_with_the_name_of_who_may_say_yes_and_its_time() {
    let person = Person::begins();
    let job = notes(
        &person,
        VisitNote::Here {
            name: " the owner ".to_owned(),
            may_say_yes: true,
        },
    );
    assert!(job.arrive.here[0].starts_with("the owner, may say yes, "));
    let walk = job.arrive.permissions[0].clone();
    assert_eq!((walk.name.as_str(), walk.on), ("Walk round", false));
    let job = notes(&person, walk.tick);
    let walk = &job.arrive.permissions[0];
    assert!(walk.on);
    assert!(walk.about.as_ref().unwrap().starts_with("the owner, "));
    let job = notes(&person, walk.clear.clone());
    assert!(!job.arrive.permissions[0].on);
    assert!(person.undoes().arrive.permissions[0].on);
}

#[test]
fn a_note_said_twice_is_booked_once_and_the_last_one_stands() {
    let person = Person::begins();
    let ice = |seen| VisitNote::Hazard {
        what: Hazard::Ice,
        seen,
    };
    notes(&person, ice(true));
    notes(&person, ice(true));
    assert!(notes(&person, ice(true)).arrive.hazards[0].on);
    assert!(!person.undoes().arrive.hazards[0].on);
    assert!(person.looks().undo.is_none());
}

#[test]
fn nobody_home_takes_the_climbing_tasks_away() {
    let person = Person::begins();
    person.walks("40' out 20' out 40' out 20'");
    let before = person.looks();
    assert!(card(&before, "deck").is_some());
    assert!(before.whats_left.iter().any(|open| open.thing == "layers"));
    let job = notes(&person, VisitNote::GroundOnly { on: true });
    assert!(job.arrive.ground_only.on);
    let asked = job.arrive.permissions.iter();
    let asked: Vec<&str> = asked.map(|asked| asked.name.as_str()).collect();
    assert_eq!(asked, ["Walk round", "Photograph", "Look into the attic"]);
    assert!(card(&job, "deck").is_none());
    assert!(!job.whats_left.iter().any(|open| open.thing == "layers"));
}

#[test]
fn what_is_no_heading_and_nobody_are_refused() {
    let person = Person::begins();
    let refused = |note| {
        person.is_refused(ArriveRequest::Visit {
            job: person.job,
            note,
        })
    };
    assert_eq!(
        refused(VisitNote::Front {
            heading: Some(361.0)
        }),
        "A compass reads 0 to 360 degrees. Stand before the front and tap again."
    );
    assert_eq!(
        refused(VisitNote::Here {
            name: "  ".to_owned(),
            may_say_yes: false
        }),
        "Who is it? Write a name, or what they are: tenant, owner, neighbor."
    );
    assert_eq!(
        refused(VisitNote::Promise {
            words: "x".repeat(401)
        }),
        "A note has at most 400 letters. Say it shorter, or in two."
    );
    assert_eq!(person.looks().arrive.front, None);
}

#[test]
fn the_front_is_noted_with_and_without_a_compass() {
    let person = Person::begins();
    let job = notes(
        &person,
        VisitNote::Front {
            heading: Some(212.4),
        },
    );
    let front = job.arrive.front.unwrap();
    assert!(front.starts_with("The front is noted, looking 212° by the compass, "));
    let job = notes(&person, VisitNote::Front { heading: None });
    assert!(job.arrive.front.unwrap().ends_with("Set sides by hand."));
}

#[test]
fn the_check_has_nine_cards_at_most_of_an_untouched_house_and_each_leaves_when_it_is_mended() {
    let person = Person::begins();
    person.walks("40' out 20' out 40' out 18'");
    let job = person.looks();
    let open: Vec<&str> = job
        .check
        .open
        .iter()
        .map(|item| item.thing.as_str())
        .collect();
    assert_eq!(
        open,
        [
            "pitches",
            "closure",
            "deck",
            "sides",
            "driveway",
            "permissions",
            "promise",
            "copies"
        ]
    );
    assert!(card(&job, "closure").unwrap().words.en.contains("2 ft"));
    assert_eq!(card(&job, "promise").unwrap().next, NextAct::Arrive);
    let driveway = job.arrive.driveway.tick.clone();
    assert!(notes(&person, driveway).arrive.driveway.on);
    notes(
        &person,
        VisitNote::Promise {
            words: String::new(),
        },
    );
    for what in Permission::ALL {
        notes(&person, allowed(what, true));
    }
    for leg in 1..=4 {
        person.slopes(leg, 6.0);
    }
    let job = person.looks();
    for gone in ["driveway", "promise", "permissions"] {
        assert_eq!(card(&job, gone), None, "{gone}");
    }
    assert!(card(&job, "closure").is_some());
}

#[test]
fn a_face_whose_slope_would_narrow_the_area_is_offered_with_its_feet_of_roof() {
    let person = Person::begins();
    person.walks("40' out 20' out 40' out 20'");
    for leg in 1..=4 {
        let read = eavebook_core::book::kinds::PitchRead::LevelAndTape {
            run_in: 12.0,
            rise_in: 6.0,
        };
        person.asks(PlanRequest::Pitch {
            job: person.job,
            leg,
            read,
        });
    }
    let job = person.looks();
    let again: Vec<&CheckItem> = job
        .check
        .open
        .iter()
        .filter(|item| item.words.en.starts_with("Read once more"))
        .collect();
    assert!((1..=3).contains(&again.len()), "{again:?}");
    assert!(again[0].words.en.contains("sq ft instead of ±"));
}

#[test]
fn the_check_holds_its_place_over_a_restart_and_ends_complete_until_something_is_booked() {
    let mut person = Person::begins();
    person.walks("40' out 20' out 40' out 20'");
    let at = Some("sides".to_owned());
    person.asks(CheckRequest::HoldPlace {
        job: person.job,
        at: at.clone(),
    });
    person.starts_the_program_again();
    assert_eq!(person.looks().check.at, at);
    let job = notes(
        &person,
        VisitNote::Left {
            reason: Some("Dark".to_owned()),
        },
    );
    let complete = job.check.complete.unwrap().en;
    assert!(complete.starts_with("Check complete. "), "{complete}");
    assert!(complete.contains("Left because: Dark."));
    let job = notes(&person, VisitNote::GroundOnly { on: true });
    assert_eq!(job.check.complete, None);
}

#[test]
fn the_counts_tell_open_from_unproved() {
    let person = Person::begins();
    let job = person.walks("40' out 20' out 40' out 20'");
    let counts = &job.check.counts.en;
    let mut numbers = counts
        .split(' ')
        .filter_map(|word| word.parse::<usize>().ok());
    let told = numbers.next().unwrap() + numbers.next().unwrap();
    assert_eq!(told, job.whats_left.len(), "{counts}");
    assert!(counts.ends_with(" unproved"));
}

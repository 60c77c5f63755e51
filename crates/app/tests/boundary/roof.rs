use crate::person::{Person, face, leg, total};
use eavebook_app::reply::State;
use eavebook_app::request::PlanRequest;
use eavebook_core::book::kinds::{EndKind, PitchRead};

/// 60 by 30 within an inch, read once.
fn rectangle() -> Person {
    let person = Person::begins();
    person.walks("60' out 30' out 60' out 30'");
    person
}

#[test]
fn a_face_a_leg_stands_there_as_soon_as_the_outline_closes() {
    let job = rectangle().looks();
    let faces: Vec<(&str, State)> = job
        .faces
        .iter()
        .map(|face| (face.face.title.as_str(), face.face.state))
        .collect();
    let unknown = State::NotLooked;
    assert_eq!(
        faces,
        [
            ("Front", unknown),
            ("Left", unknown),
            ("Back", unknown),
            ("Right", unknown)
        ]
    );
    let said: Vec<&str> = job.cautions.iter().map(|said| said.en.as_str()).collect();
    assert_eq!(
        said,
        ["No roof yet: nobody said what rises at leg 1. Read its pitch, or call it a gable."]
    );
}

#[test]
fn one_pitch_may_be_taken_over_by_the_other_faces_and_is_marked_so() {
    let person = rectangle();
    let job = person.slopes(1, 6.0);
    assert_eq!(
        face(&job, 1).pitch.as_ref().unwrap().words,
        "6 in 12, 26.6°"
    );
    assert_eq!(face(&job, 3).same_as, [(1, "Front".to_owned())]);
    for leg in [2, 3, 4] {
        let read = PitchRead::SameAs { leg: 1 };
        person.asks(PlanRequest::Pitch {
            job: person.job,
            leg,
            read,
        });
    }
    let job = person.looks();
    let back = face(&job, 3);
    assert_eq!(back.face.state, State::WorkedOut);
    assert_eq!(
        back.face.about,
        "rises from leg 3, taken as the same as Front"
    );
    assert!(job.cautions.is_empty(), "{:?}", job.cautions);
    let (area, give_or_take) = total(&job, "Roof area");
    // 60 x 30 times the slope factor 1.118: 2,012.5.
    assert!(area == "2,012 sq ft" || area == "2,013 sq ft", "{area}");
    assert!(give_or_take.starts_with("± "), "{give_or_take}");
    assert_eq!(total(&job, "Area in plan").0, "1,800 sq ft");
    assert_eq!(total(&job, "Eave").0, "180 ft");
    assert_eq!(total(&job, "Ridge").0, "30 ft");
    assert_eq!(total(&job, "Hip").0, "90 ft");
}

#[test]
fn gable_ends_have_rakes_and_no_slope() {
    let person = rectangle();
    for leg in [2, 4] {
        person.asks(PlanRequest::LegEnd {
            job: person.job,
            leg,
            end: EndKind::Gable,
        });
    }
    for leg in [1, 3] {
        person.slopes(leg, 6.0);
    }
    let job = person.looks();
    let gable = face(&job, 2);
    assert_eq!(
        (gable.face.title.as_str(), gable.end),
        ("Left gable", Some(EndKind::Gable))
    );
    assert_eq!(gable.face.state, leg(&job, 2).state);
    assert!(gable.same_as.is_empty());
    assert_eq!(total(&job, "Ridge").0, "60 ft");
}

#[test]
fn a_pitch_read_at_a_gable_makes_it_a_slope_again() {
    let person = rectangle();
    person.asks(PlanRequest::LegEnd {
        job: person.job,
        leg: 2,
        end: EndKind::Gable,
    });
    let job = person.slopes(2, 6.0);
    assert_eq!(face(&job, 2).end, Some(EndKind::Sloped));
    assert!(face(&job, 2).pitch.is_some());
}

#[test]
fn a_phone_both_ways_round_is_one_position_and_two_positions_agree() {
    let person = rectangle();
    let read = |degrees, reversed| {
        let read = PitchRead::Phone { degrees, reversed };
        person.asks(PlanRequest::Pitch {
            job: person.job,
            leg: 1,
            read,
        })
    };
    read(27.2, false);
    assert_eq!(face(&read(26.0, true), 1).face.state, State::ReadOnce);
    let job = read(27.1, false);
    assert_eq!(face(&job, 1).face.state, State::Agreed);
    let story = &face(&job, 1).face.story;
    assert_eq!(story[0].value, "27.1°");
    assert!(story[1].about.starts_with("by a phone turned end for end"));
}

#[test]
fn level_and_tape_gives_a_slope_without_a_phone() {
    let person = rectangle();
    let read = PitchRead::LevelAndTape {
        run_in: 12.0,
        rise_in: 6.0,
    };
    let job = person.asks(PlanRequest::Pitch {
        job: person.job,
        leg: 1,
        read,
    });
    assert!(
        face(&job, 1)
            .pitch
            .as_ref()
            .unwrap()
            .words
            .starts_with("6 in 12")
    );
    assert_eq!(face(&job, 1).face.story[0].value, "6 in over 12 in, 26.6°");
}

#[test]
fn what_is_no_slope_is_refused() {
    let person = rectangle();
    let refused = |read| {
        person.is_refused(PlanRequest::Pitch {
            job: person.job,
            leg: 1,
            read,
        })
    };
    assert_eq!(
        refused(PitchRead::Number { in_12: 0.0 }),
        "0 in 12 is no slope of a roof. Read it again: a rise above 0, at most 48 in 12."
    );
    assert_eq!(
        refused(PitchRead::Phone {
            degrees: 90.0,
            reversed: false
        }),
        "90° is no slope of a roof. Read it again: the phone flat on the slope, between 0° and 75°."
    );
    assert!(
        refused(PitchRead::LevelAndTape {
            run_in: 0.0,
            rise_in: 6.0
        })
        .contains("no slope")
    );
    assert_eq!(
        refused(PitchRead::SameAs { leg: 3 }),
        "A face takes its pitch over from another face of this roof. Choose one that has one."
    );
}

#[test]
fn whats_left_names_the_dearest_to_come_back_for_first() {
    let person = Person::begins();
    person.walks("60' out 30' out 60' out 48'");
    let job = person.looks();
    let open: Vec<&str> = job
        .whats_left
        .iter()
        .map(|open| open.words.en.as_str())
        .collect();
    assert_eq!(open[0], job.closure.words.en);
    assert!(
        open.contains(&"Front: nobody looked at its pitch."),
        "{open:?}"
    );
    assert!(
        open.last().unwrap().starts_with("No photo is kept yet."),
        "{open:?}"
    );
}

#[test]
fn a_struck_pitch_counts_no_more() {
    let person = rectangle();
    let entry = face(&person.slopes(1, 6.0), 1).face.story[0].entry;
    let job = person.strikes(entry);
    assert_eq!(face(&job, 1).face.state, State::NotLooked);
    assert_eq!(face(&job, 1).face.story[0].state, State::Struck);
}

use crate::person::Person;
use eavebook_app::reply::{PlanDrawn, PlanReply, Reply};
use eavebook_app::request::{FieldBookRequest, Language, PlanRequest, Setting, SettingsRequest};
use eavebook_core::book::kinds::{EndKind, TapeMarks};

/// 60 by 30, walked with the building on the right, as the program begins.
fn rectangle() -> Person {
    let person = Person::begins();
    person.walks("60' out 30' out 60' out 30'");
    person
}

/// The same under a gable roof of 6 in 12 that rises from the front and the back.
fn gables() -> Person {
    let person = rectangle();
    for leg in [2, 4] {
        let job = person.job;
        let end = EndKind::Gable;
        person.asks(PlanRequest::LegEnd { job, leg, end });
    }
    person.slopes(1, 6.0);
    person.slopes(3, 6.0);
    person
}

fn plan(person: &Person, width: f64) -> PlanDrawn {
    match person.says(PlanRequest::Plan {
        job: person.job,
        width,
        tallest: width,
        letters: 18.0,
    }) {
        Reply::Plan(PlanReply::Plan(plan)) => *plan,
        other => panic!("{other:?}"),
    }
}

fn svg(person: &Person, width: f64) -> String {
    plan(person, width).svg.unwrap()
}

/// What stands in the text elements of a drawing.
fn written(svg: &str) -> Vec<&str> {
    let texts = svg.split("<text ").skip(1);
    let between = texts.filter_map(|text| text.split_once('>')?.1.split_once("</text>"));
    between.map(|(words, _)| words).collect()
}

#[test]
fn while_the_line_is_open_there_is_no_plan() {
    let person = Person::begins();
    person.walks("60' out 30'");
    let plan = plan(&person, 358.0);
    assert_eq!((plan.svg, plan.left_off), (None, 0));
    assert!(plan.edges.is_empty());
}

#[test]
fn a_gable_roof_is_drawn_with_the_names_of_its_lists() {
    let person = gables();
    let plan = plan(&person, 900.0);
    let called = |thing: &str| plan.edges.get(thing).map(String::as_str);
    assert_eq!(called("leg 1"), Some("e1 60'"));
    // Half of 30 at 6 in 12 is 15 times 1.118 on the slope: 16.77 ft.
    assert_eq!(called("leg 2"), Some("k2a 16' 9\", k2b 16' 9\""));
    assert_eq!(called("r1"), Some("r1"));
    assert_eq!(plan.left_off, 0);
    let svg = plan.svg.unwrap();
    let written = written(&svg);
    let faces = person.looks().faces;
    for words in ["e1 60&#39;", "r1 60&#39;", "6", "Front, the street side"] {
        assert!(written.contains(&words), "{words} in {written:?}");
    }
    let slopes = faces.iter().filter(|face| face.end != Some(EndKind::Gable));
    for face in slopes {
        let name = face.face.title.as_str();
        assert_eq!(
            written.iter().filter(|words| **words == name).count(),
            1,
            "{name} in {written:?}"
        );
    }
    assert!(!svg.contains("Left gable"), "a gable is no face");
    assert!(svg.contains("<title>Plan of the roof: 7 Invented Street</title>"));
}

#[test]
fn an_outline_without_a_roof_is_drawn_with_its_worked_out_leg_dashed_and_in_words() {
    let person = Person::begins();
    person.walks("60' out 30' out 60' out");
    person.asks(FieldBookRequest::CannotGet {
        job: person.job,
        thing: eavebook_core::book::kinds::Thing::Leg { leg: 4 },
        reason: None,
    });
    let svg = svg(&person, 900.0);
    assert!(written(&svg).contains(&"Worked out, not read"), "{svg}");
    assert!(svg.contains("<g data-edge=\"e4\" data-hand=\"worked out\">"));
    assert!(written(&svg).contains(&"e4 30&#39;"));
}

#[test]
fn a_leg_against_which_the_readings_speak_is_marked_by_a_sign_and_in_words() {
    let person = Person::begins();
    let job = person.walks("60' out 30' out 50' out 30'");
    let suspects = &job.closure.suspects;
    assert!(!suspects.is_empty());
    let svg = svg(&person, 900.0);
    for suspect in suspects {
        let name = suspect.thing.replace("leg ", "e");
        let drawn = format!("<g data-edge=\"{name}\" data-hand=\"suspect\">");
        assert!(svg.contains(&drawn), "{drawn}");
        let said = format!("{name}? ");
        let said = written(&svg).iter().any(|words| words.starts_with(&said));
        assert!(said, "{name}");
    }
    assert!(written(&svg).contains(&"The readings speak against it"));
}

#[test]
fn while_a_leg_is_read_again_without_sight_no_length_stands_on_the_plan() {
    let person = gables();
    person.opens_blind(1);
    let plan = plan(&person, 900.0);
    let svg = plan.svg.unwrap();
    assert!(!svg.contains("60") || !svg.contains("&#39;"), "{svg}");
    assert_eq!(plan.edges.get("leg 1").map(String::as_str), Some("e1"));
    assert!(written(&svg).contains(&"e1"));
}

#[test]
fn in_spanish_and_in_meters_the_plan_says_so() {
    let person = gables();
    person.says(SettingsRequest::Set {
        setting: Setting::Language(Language::Spanish),
    });
    person.says(SettingsRequest::Set {
        setting: Setting::Tape(TapeMarks::Meters),
    });
    let svg = svg(&person, 900.0);
    let written = written(&svg);
    for words in [
        "Atrás",
        "Frente",
        "Frente, el lado de la calle",
        "Cumbrera",
        "e1 18.29 m",
    ] {
        assert!(written.contains(&words), "{words} in {written:?}");
    }
    assert!(svg.contains("<title>Plano del techo: 7 Invented Street</title>"));
}

#[test]
fn no_letter_is_smaller_than_the_reader_has_them() {
    for width in [288.0, 358.0, 900.0] {
        let svg = svg(&gables(), width);
        let sizes = svg.split("font-size=\"").skip(1);
        for size in sizes.filter_map(|rest| rest.split_once('"')?.0.parse::<f64>().ok()) {
            assert!(size >= 17.99, "{size} at {width}");
        }
        assert!(svg.contains(&format!("width=\"{width}\"")));
    }
}

#[test]
fn a_width_that_no_screen_has_is_drawn_as_one_that_some_have() {
    let svg = svg(&gables(), 1e300);
    assert!(!svg.contains("NaN") && !svg.contains("inf"));
}

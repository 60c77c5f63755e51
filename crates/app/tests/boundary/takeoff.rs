use crate::person::Person;
use eavebook_app::demo;
use eavebook_app::reply::{Reply, TakeoffLine, TakeoffPart, TakeoffView};
use eavebook_app::request::{FieldBookRequest, Key, PlanRequest, TakeoffRequest, TodayRequest};
use eavebook_core::settings::Terms;
use eavebook_core::solve::{solve, take_off_and_price};
use eavebook_core::survey_file;
use std::fmt::Write;
use uuid::Uuid;

fn takeoff(person: &Person, job: Uuid) -> TakeoffView {
    match person.says(TakeoffRequest::Takeoff { job }) {
        Reply::Takeoff(view) => *view,
        other => panic!("{other:?}"),
    }
}

fn part<'a>(view: &'a TakeoffView, name: &str) -> &'a TakeoffPart {
    view.parts.iter().find(|part| part.name == name).unwrap()
}

fn line<'a>(view: &'a TakeoffView, name: &str, key: &str) -> &'a TakeoffLine {
    let lines = &part(view, name).lines;
    lines.iter().find(|line| line.key == key).unwrap()
}

fn total(view: &TakeoffView) -> &str {
    &line(view, "Price", "total").value.words
}

fn sets(person: &Person, job: Uuid, key: &str, value: &str) {
    person.asks(TakeoffRequest::SetRate {
        job,
        key: key.to_owned(),
        value: value.to_owned(),
    });
}

fn undoes(person: &Person, job: Uuid) {
    let entry = person.asks(TodayRequest::Job { job }).undo.unwrap().entry;
    person.asks(FieldBookRequest::Undo { job, entry });
}

#[test]
fn the_walk_is_priced_as_its_survey_file_is() {
    let person = Person::begins();
    let job = demo::book(person.app()).unwrap().job;
    let text = include_bytes!("../../../../assets/demo-house.json");
    let survey = survey_file::read(text).unwrap().survey;
    let solved = solve(&survey).unwrap();
    let priced = take_off_and_price(&survey, &solved, &Terms::demo()).unwrap();
    let view = takeoff(&person, job);
    assert_eq!(total(&view), priced.price.total.words());
    let order = part(&view, "Order list").lines.iter();
    let told: Vec<String> = order.map(|line| line.key.clone()).collect();
    let lines = priced.takeoff.order.iter();
    let there: Vec<String> = lines.map(|line| line.item.to_string()).collect();
    assert_eq!(told, there);
}

#[test]
fn all_that_is_said_of_the_takeoff_of_the_pretend_house() {
    let person = Person::begins();
    let job = demo::book(person.app()).unwrap().job;
    insta::assert_snapshot!(words(&takeoff(&person, job)));
}

/// Every word that the leaf shows, but for the age of the code profile.
fn words(view: &TakeoffView) -> String {
    let mut words = String::new();
    for lack in view.not_known.iter().chain(&view.not_priced) {
        let opens = lack.opens.as_ref().map_or("-", |thing| &thing.thing);
        let costs = lack.costs.as_deref().unwrap_or("-");
        let _ = writeln!(words, "lacks: {} | {costs} | {opens}", lack.words.en);
    }
    let cautions = view.cautions.iter();
    for caution in cautions.filter(|caution| !caution.code.contains("code")) {
        let _ = writeln!(words, "caution: {}", caution.en);
    }
    for part in &view.parts {
        let said = part.words.as_ref().map_or("-", |said| &said.en);
        let _ = writeln!(words, "\n{} | {said}", part.name);
        for line in &part.lines {
            say(&mut words, line, 1);
        }
    }
    words
}

fn say(words: &mut String, line: &TakeoffLine, depth: usize) {
    let indent = "  ".repeat(depth);
    let parts = [
        Some(line.value.words.clone()),
        line.value.give_or_take.clone(),
        line.spare.clone(),
        line.word.clone(),
    ];
    let figure = parts.into_iter().flatten().collect::<Vec<_>>().join(", ");
    let _ = writeln!(words, "{indent}{} | {figure} | {}", line.name, line.formula);
    let list = |all: Vec<&str>| all.join(", ");
    let things = list(
        line.things
            .iter()
            .map(|thing| thing.thing.as_str())
            .collect(),
    );
    let rates = line
        .rates
        .iter()
        .map(|rate| format!("{} {}", rate.key, rate.value));
    let rates: Vec<String> = rates.chain(line.notes.iter().cloned()).collect();
    let _ = writeln!(words, "{indent}  of {things}; by {}", rates.join(", "));
    for below in &line.lines {
        say(words, below, depth + 1);
    }
}

#[test]
fn a_rate_changed_for_a_job_moves_its_total_and_undo_brings_it_back() {
    let person = Person::begins();
    let job = demo::book(person.app()).unwrap().job;
    let before = takeoff(&person, job);
    sets(&person, job, "field.price", "60.00");
    let after = takeoff(&person, job);
    assert_ne!(total(&before), total(&after));
    let rate = &after.changed[0];
    assert_eq!(
        (rate.key.as_str(), rate.value.as_str(), rate.was.as_deref()),
        ("field.price", "60.00", Some("34.50"))
    );
    sets(&person, job, "field.price", "60.00");
    undoes(&person, job);
    assert_eq!(takeoff(&person, job), before);
}

#[test]
fn a_blank_price_is_named_as_not_priced_with_its_rate_and_its_line_has_no_amount() {
    let person = Person::begins();
    let job = demo::book(person.app()).unwrap().job;
    let already = takeoff(&person, job).not_priced.len();
    sets(&person, job, "field.price", "");
    let view = takeoff(&person, job);
    assert_eq!(view.not_priced.len(), already + 1);
    let lack = view
        .not_priced
        .iter()
        .find(|lack| lack.rate.is_some())
        .unwrap();
    assert_eq!(
        lack.words.en,
        "Not priced: field: its price is blank in the rates. Fill it in."
    );
    assert_eq!(lack.rate.as_ref().unwrap().key, "field.price");
    let materials = line(&view, "Price", "materials");
    let field = materials
        .lines
        .iter()
        .find(|line| line.key == "pack field")
        .unwrap();
    assert_eq!(field.word.as_deref(), Some("not priced"));
}

#[test]
fn a_rate_that_is_none_is_refused_by_its_key_and_changes_nothing() {
    let person = Person::begins();
    let job = demo::book(person.app()).unwrap().job;
    let before = takeoff(&person, job);
    let refused = [
        ("field.price", "thirty"),
        ("field.colour", "3"),
        ("cap.exposure_in", "0"),
    ]
    .map(|(key, value)| {
        person.is_refused(TakeoffRequest::SetRate {
            job,
            key: key.to_owned(),
            value: value.to_owned(),
        })
    });
    insta::assert_snapshot!(refused.join("\n"));
    assert_eq!(takeoff(&person, job), before);
}

#[test]
fn what_nobody_looked_at_stands_there_with_what_it_costs() {
    let person = Person::begins();
    person.walks("40' out 24' out 40' out 24'");
    let lack = takeoff(&person, person.job).lack.unwrap();
    assert_eq!(
        lack.words.en,
        "No roof yet: nobody said what rises at leg 1. Read its pitch, or call it a gable."
    );
    assert_eq!(lack.opens.unwrap().thing, "face 1");
    for leg in 1..=4 {
        person.slopes(leg, 6.0);
    }
    let view = takeoff(&person, person.job);
    let said = |view: &TakeoffView| -> Vec<String> {
        let lacks = view.not_known.iter();
        lacks.map(|lack| lack.words.code.clone()).collect()
    };
    assert_eq!(
        said(&view),
        ["layers", "deck", "overhang_unread", "eave_height_unread"]
    );
    let costs = view.not_known[0].costs.as_deref().unwrap();
    let (low, high) = costs.split_once(" to ").unwrap();
    assert_ne!(low, high);
    person.asks(PlanRequest::Layers {
        job: person.job,
        layers: Some(1),
        kind: None,
        leg: Some(1),
    });
    let view = takeoff(&person, person.job);
    assert_eq!(
        said(&view),
        ["deck", "overhang_unread", "eave_height_unread"]
    );
}

#[test]
fn every_line_names_a_thing_of_the_job_or_a_rate() {
    fn walk(lines: &[TakeoffLine], check: &mut impl FnMut(&TakeoffLine)) {
        for line in lines {
            check(line);
            walk(&line.lines, check);
        }
    }
    let person = Person::begins();
    let job = demo::book(person.app()).unwrap();
    let view = takeoff(&person, job.job);
    let mut known: Vec<&str> = Vec::new();
    known.extend(job.edges.iter().map(|thing| thing.thing.as_str()));
    known.extend(job.faces.iter().map(|face| face.face.thing.as_str()));
    known.extend(job.items.iter().map(|item| item.item.thing.as_str()));
    let mut lines = 0;
    for part in &view.parts {
        walk(&part.lines, &mut |line| {
            lines += 1;
            for thing in &line.things {
                assert!(
                    known.contains(&thing.thing.as_str()),
                    "{}: {}",
                    line.name,
                    thing.thing
                );
            }
            let made = line.things.len() + line.rates.len() + line.lines.len();
            assert!(made > 0, "{} of {}", line.name, part.name);
        });
    }
    assert!(lines > 40, "{lines}");
}

#[test]
fn a_key_press_is_answered_with_the_keypad_alone() {
    let person = Person::begins();
    demo::book(person.app()).unwrap();
    person.opens(1);
    assert!(matches!(
        person.presses(Key::Digit { digit: 4 }),
        Reply::Pad(_)
    ));
}

use crate::person::{Person, total};
use eavebook_app::demo;
use eavebook_app::reply::{ClosureWord, JobView, State};
use eavebook_core::roof::EdgeKind;
use eavebook_core::units::RoundTo;
use eavebook_core::{solve, survey_file};
use std::fmt::Write;

#[test]
fn the_walk_comes_to_what_its_survey_file_comes_to() {
    let person = Person::begins();
    let job = demo::book(person.app()).unwrap();
    let text = include_bytes!("../../../../assets/demo-house.json");
    let solved = solve::solve(&survey_file::read(text).unwrap().survey).unwrap();
    let area = solved.totals.area.unwrap();
    let told = total(&job, "Roof area");
    assert_eq!(told, (area.words().as_str(), area.give_or_take().as_str()));
    for (name, kind) in [
        ("Ridge", EdgeKind::Ridge),
        ("Hip", EdgeKind::Hip),
        ("Valley", EdgeKind::Valley),
    ] {
        let length = solved.totals.edges[&kind];
        assert_eq!(total(&job, name).0, length.words(RoundTo::Inch), "{name}");
    }
}

#[test]
fn it_holds_a_slip_that_was_found_and_struck() {
    let person = Person::begins();
    let job = demo::book(person.app()).unwrap();
    assert_eq!(job.closure.state, ClosureWord::Closes);
    let struck = job.readings.iter().flat_map(|thing| &thing.story);
    let struck: Vec<&str> = struck
        .filter(|item| item.state == State::Struck)
        .map(|item| item.about.as_str())
        .collect();
    assert_eq!(struck.len(), 1);
    assert!(
        struck[0].ends_with("digits turned: 52 booked for 25"),
        "{}",
        struck[0]
    );
    let once = job
        .faces
        .iter()
        .filter(|face| face.face.state == State::ReadOnce)
        .count();
    assert!(once >= 3, "{once}");
    assert_eq!(job.photos.len(), 2);
    assert!(job.pretend);
}

#[test]
fn booked_twice_it_stands_there_once() {
    let person = Person::begins();
    let first = demo::book(person.app()).unwrap();
    let second = demo::book(person.app()).unwrap();
    assert_eq!(first.job, second.job);
    assert_eq!(person.today().stops.len(), 2);
}

#[test]
fn all_that_is_said_of_it() {
    let person = Person::begins();
    let job = demo::book(person.app()).unwrap();
    insta::assert_snapshot!(words(&job));
}

/// Every word that a screen shows, but for times of day.
fn words(job: &JobView) -> String {
    let mut words = String::new();
    let value = |figure: &Option<eavebook_app::reply::Figure>| match figure {
        Some(figure) => match &figure.give_or_take {
            Some(give_or_take) => format!("{} {give_or_take}", figure.words),
            None => figure.words.clone(),
        },
        None => "-".to_owned(),
    };
    let mut line = |text: String| {
        let _ = writeln!(words, "{text}");
    };
    line(format!("{} | {}", job.address, job.copies.en));
    line(format!(
        "here: {}",
        job.you_were_here.as_ref().unwrap().words.en
    ));
    line(format!("closure: {}", job.closure.words.en));
    line(format!(
        "more: {}",
        job.closure.more.as_ref().map_or("-", |more| &more.en)
    ));
    for thing in &job.edges {
        let (title, state) = (&thing.title, &thing.state_word);
        line(format!(
            "{title} | {} | {state} | {}",
            value(&thing.value),
            thing.about
        ));
    }
    for face in &job.faces {
        let thing = &face.face;
        let (area, pitch) = (value(&thing.value), value(&face.pitch));
        let (title, state) = (&thing.title, &thing.state_word);
        line(format!(
            "{title} | {area} | {pitch} | {state} | {}",
            thing.about
        ));
    }
    for item in &job.items {
        let thing = &item.item;
        let (title, state) = (&thing.title, &thing.state_word);
        line(format!(
            "{title} | {} | {state} | {}",
            value(&thing.value),
            thing.about
        ));
    }
    for total in &job.totals {
        line(format!(
            "{} | {}",
            total.name,
            value(&Some(total.value.clone()))
        ));
    }
    for caution in &job.cautions {
        line(format!("caution: {}", caution.en));
    }
    for open in &job.whats_left {
        line(format!("open: {}", open.words.en));
    }
    words
}

use crate::person::{ADDRESS, Person};
use eavebook_app::reply::Reply;
use eavebook_app::request::{Setting, SettingsRequest, TodayRequest};

#[test]
fn a_new_job_says_that_nothing_is_read_and_where_its_copies_are() {
    let person = Person::begins();
    let stops = person.today().stops;
    assert_eq!(stops.len(), 1);
    assert_eq!(
        (stops[0].job, stops[0].address.as_str()),
        (person.job, ADDRESS)
    );
    assert_eq!(stops[0].standing.en, "Nothing read yet.");
    assert_eq!(stops[0].copies.en, "1 copy: this phone only");
}

#[test]
fn a_job_says_how_it_stands() {
    let person = Person::begins();
    person.walks("60' out 30' out 60' out 30'");
    assert_eq!(
        person.today().stops[0].standing.en,
        "4 legs read. Closes within 1 in."
    );
}

#[test]
fn the_newest_job_is_first_and_the_pretend_house_before_it() {
    let person = Person::begins();
    let newer = person
        .asks(TodayRequest::StartJob {
            address: "9 Invented Street".to_owned(),
        })
        .job;
    let Reply::Job(pretend) = person.app().start_pretend("The pretend house") else {
        panic!()
    };
    let order: Vec<_> = person.today().stops.iter().map(|stop| stop.job).collect();
    assert_eq!(order, [pretend.job, newer, person.job]);
}

#[test]
fn a_search_finds_jobs_and_things_by_their_words() {
    let person = Person::begins();
    person.walks("60' out 30'");
    let found = person.searches("invented STREET").found;
    assert_eq!(found.len(), 1);
    assert_eq!(found[0].thing, None);
    let found = person.searches("leg 2").found;
    assert_eq!(found[0].thing.as_deref(), Some("leg 2"));
    assert!(found[0].words.contains("30 ft"), "{}", found[0].words);
    // As one asks for it, not as it is written: leg 1 is the front.
    let found = person.searches("leg front side").found;
    assert_eq!(found[0].thing.as_deref(), Some("leg 1"));
    assert!(person.searches("nowhere").found.is_empty());
    assert!(person.searches("  ").found.is_empty());
}

#[test]
fn an_address_is_wanted() {
    let person = Person::begins();
    let start = |address: &str| TodayRequest::StartJob {
        address: address.to_owned(),
    };
    assert_eq!(
        person.is_refused(start("  ")),
        "A job needs its address. Type the street and the number."
    );
    assert!(
        person
            .is_refused(start(&"x".repeat(201)))
            .starts_with("An address has at most 200")
    );
    assert_eq!(person.today().stops.len(), 1);
}

#[test]
fn settings_outlive_the_program() {
    let mut person = Person::begins();
    person.says(SettingsRequest::Set {
        setting: Setting::MirrorHand(true),
    });
    person.says(SettingsRequest::Set {
        setting: Setting::Sound(false),
    });
    person.starts_the_program_again();
    let settings = person.today().settings;
    assert!(settings.mirror_hand && !settings.sound && settings.single_letter_keys);
    assert!(!settings.tape_chosen);
}

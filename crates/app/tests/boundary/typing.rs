use crate::person::{Person, leg, value};
use eavebook_app::reply::Reply;
use eavebook_app::request::{FieldBookRequest, FractionStep, Key, Meant, Setting, SettingsRequest};
use eavebook_core::book::kinds::{Followed, HowRead, TapeMarks, Thing};
use eavebook_words::Language;

fn digit(digit: u8) -> Key {
    Key::Digit { digit }
}

#[test]
fn what_is_booked_is_read_back_as_written_and_as_spoken() {
    let person = Person::begins();
    let job = person.reads(1, "42' 7 1/2\"");
    let back = job.pad.read_back.clone().unwrap();
    assert_eq!(back.value, "42 ft 7 1/2 in");
    assert_eq!(back.spoken, "four two feet, seven and a half inches");
    assert_eq!(
        (back.title.as_str(), back.answered),
        ("Leg 1, front", false)
    );
    assert!(job.pad.open.is_none());
    assert_eq!(job.pad.corner_after, Some(1));
    assert_eq!(value(leg(&job, 1)), "42 ft 7 1/2 in");
}

#[test]
fn an_answered_read_back_stays_until_the_next_act() {
    let person = Person::begins();
    let reading = person.reads(1, "42'").pad.read_back.unwrap().reading;
    let job = person.asks(FieldBookRequest::Right {
        job: person.job,
        reading,
    });
    assert!(job.pad.read_back.as_ref().unwrap().answered);
    assert!(leg(&job, 1).story[0].about.ends_with("read back right"));
    let job = person.turns(1, eavebook_core::book::kinds::Turn::Outside);
    assert!(job.pad.read_back.is_none() && job.pad.open.is_some());
}

#[test]
fn every_refused_key_says_why_and_changes_nothing() {
    let person = Person::begins();
    person.opens(1);
    person.types("42'");
    let said = |key: Key| match person.presses(key) {
        Reply::Pad(pad) => (
            pad.refused.map(|said| said.en),
            pad.open.unwrap().slots[0].typed.clone(),
        ),
        other => panic!("{other:?}"),
    };
    let (why, feet) = said(Key::Whole);
    assert_eq!(
        why.unwrap(),
        "The feet are typed. Go on with the rest of the length."
    );
    assert_eq!(feet, "42");
    assert_eq!(said(digit(1)), (None, "42".to_owned()));
    let (why, _) = said(digit(4));
    assert_eq!(
        why.unwrap(),
        "14 in is over a foot. Did you read 1 ft 2 in?"
    );
}

#[test]
fn a_refused_key_is_explained_in_the_language_of_the_device() {
    let person = Person::begins();
    person.says(SettingsRequest::Set {
        setting: Setting::Language(Language::Spanish),
    });
    person.opens(1);
    for number in [2, 7] {
        person.presses(digit(number));
    }
    let Reply::Pad(pad) = person.presses(Key::BookIt) else {
        panic!()
    };
    let refused = pad.refused.unwrap();
    assert_eq!(refused.code, "reading.no_unit");
    assert_eq!(refused.en, "¿27 qué? Toque pies.");
}

#[test]
fn a_number_without_a_unit_is_not_booked() {
    let person = Person::begins();
    person.opens(1);
    for number in [2, 7] {
        let Reply::Pad(_) = person.presses(digit(number)) else {
            panic!()
        };
    }
    let Reply::Pad(pad) = person.presses(Key::BookIt) else {
        panic!()
    };
    assert_eq!(pad.refused.unwrap().en, "27 what? Press ft.");
    assert_eq!(pad.open.unwrap().slots[0].typed, "27");
    assert!(person.looks().readings.is_empty());
}

#[test]
fn a_fast_double_press_is_kept_and_asked_about() {
    let person = Person::begins();
    let press = person.opens(1).pad.open.unwrap().press;
    let two = |press, since_ms| FieldBookRequest::Press {
        job: person.job,
        press,
        key: digit(2),
        since_ms,
    };
    person.says(two(press, None));
    let Reply::Pad(pad) = person.says(two(press + 1, Some(60))) else {
        panic!()
    };
    assert_eq!(pad.double.unwrap().en, "Two 2s?");
    assert_eq!(pad.open.unwrap().slots[0].typed, "22");
    let one = FieldBookRequest::AnswerDouble {
        job: person.job,
        meant: Meant::One,
    };
    let Reply::Pad(pad) = person.says(one) else {
        panic!()
    };
    assert_eq!(
        (pad.double, pad.open.unwrap().slots[0].typed.as_str()),
        (None, "2")
    );
}

#[test]
fn ten_fast_keys_are_all_stored_in_their_order() {
    let person = Person::begins();
    let first = person.opens(1).pad.open.unwrap().press;
    let keys = [
        digit(4),
        digit(2),
        Key::Whole,
        digit(7),
        Key::Inches,
        Key::Eighths { eighths: 3 },
        Key::TakeBackOne,
        Key::Eighths { eighths: 5 },
        Key::TakeBackOne,
        Key::Eighths { eighths: 4 },
    ];
    for (press, key) in (first..).zip(keys) {
        person.says(FieldBookRequest::Press {
            job: person.job,
            press,
            key,
            since_ms: Some(100),
        });
    }
    assert_eq!(
        person.books().pad.read_back.unwrap().value,
        "42 ft 7 1/2 in"
    );
}

#[test]
fn a_key_out_of_its_order_is_refused_and_nothing_is_lost() {
    let person = Person::begins();
    let press = person.opens(1).pad.open.unwrap().press;
    let ahead = FieldBookRequest::Press {
        job: person.job,
        press: press + 1,
        key: digit(2),
        since_ms: None,
    };
    assert_eq!(
        person.is_refused(ahead),
        "A key before this one did not arrive. Look at the slots and type on from there."
    );
    let pad = person.types("42'");
    assert_eq!(pad.open.unwrap().slots[0].typed, "42");
}

#[test]
fn without_an_open_keypad_a_key_is_refused() {
    let person = Person::begins();
    let key = FieldBookRequest::Press {
        job: person.job,
        press: 0,
        key: digit(2),
        since_ms: None,
    };
    assert_eq!(
        person.is_refused(key),
        "The keypad is put away. Open it with Read."
    );
}

#[test]
fn the_tape_of_the_settings_is_taken_until_something_is_typed() {
    let person = Person::begins();
    person.opens(1);
    let Reply::Settings(settings) = person.says(SettingsRequest::Set {
        setting: Setting::Tape(TapeMarks::Meters),
    }) else {
        panic!()
    };
    assert!(settings.tape_chosen);
    assert_eq!(person.looks().pad.open.unwrap().slots[0].unit, "m");
    let job = {
        person.presses(digit(9));
        person.says(SettingsRequest::Set {
            setting: Setting::Tape(TapeMarks::FeetTenths),
        });
        person.presses(Key::Whole);
        person.books()
    };
    assert_eq!(value(leg(&job, 1)), "9 m");
}

#[test]
fn fractions_may_be_set_to_quarters() {
    let person = Person::begins();
    person.says(SettingsRequest::Set {
        setting: Setting::Fractions(FractionStep::Quarters),
    });
    person.opens(1);
    person.types("42' 7\"");
    let Reply::Pad(pad) = person.presses(Key::Eighths { eighths: 3 }) else {
        panic!()
    };
    assert_eq!(
        pad.refused.unwrap().en,
        "3/8 is not a quarter. To read eighths, change the fractions in Settings."
    );
}

#[test]
fn chips_are_booked_with_the_reading() {
    let person = Person::begins();
    person.opens(1);
    let (how, followed) = (HowRead::Paced, Followed::GutterFace);
    person.says(FieldBookRequest::Chip {
        job: person.job,
        how,
        followed,
    });
    person.types("40'");
    let job = person.books();
    let about = &leg(&job, 1).story[0].about;
    assert!(
        about.starts_with("paced along the gutter face, "),
        "{about}"
    );
    assert!(about.contains("this phone"));
}

#[test]
fn what_is_half_typed_waits_while_another_thing_is_read() {
    let person = Person::begins();
    person.reads(1, "60'");
    person.opens(1);
    person.types("42'");
    let tie = Thing::Tie { from: 1, to: 2 };
    let none = FieldBookRequest::OpenPad {
        job: person.job,
        thing: Some(tie),
        blind: false,
    };
    assert_eq!(person.asks(none).pad.open.unwrap().slots[0].typed, "");
    assert_eq!(person.opens(1).pad.open.unwrap().slots[0].typed, "42");
    let closed = person.asks(FieldBookRequest::ClosePad { job: person.job });
    assert!(closed.pad.open.is_none());
    assert_eq!(person.opens(1).pad.open.unwrap().slots[0].typed, "42");
}

#[test]
fn a_leg_that_is_not_there_is_refused_by_its_number() {
    let person = Person::begins();
    let ask = |thing| FieldBookRequest::OpenPad {
        job: person.job,
        thing: Some(thing),
        blind: false,
    };
    assert_eq!(
        person.is_refused(ask(Thing::Leg { leg: 7 })),
        "There is no leg 7. Legs count from 1, at most one past the last."
    );
    assert_eq!(
        person.is_refused(ask(Thing::Tie { from: 1, to: 1 })),
        "Tie 1-1 joins no two corners of this outline. Corners count from 1."
    );
}

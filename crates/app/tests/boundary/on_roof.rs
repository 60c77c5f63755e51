use crate::person::{Person, face, value};
use eavebook_app::reply::{ItemView, JobView, State};
use eavebook_app::request::{FieldBookRequest, PlanRequest, Request, SettingsRequest};
use eavebook_core::book::kinds::{
    DeckKind, DeckSizeOf, ItemKind, SaddleObserved, SizeOf, TapeMarks, Thing,
};

fn rectangle() -> Person {
    let person = Person::begins();
    person.walks("40' out 20' out 40' out 20'");
    person
}

fn item<'a>(job: &'a JobView, name: &str) -> &'a ItemView {
    let items = &job.items;
    items.iter().find(|view| view.item.thing == name).unwrap()
}

fn adds(person: &Person, leg: u32, kind: &str) -> Box<JobView> {
    let job = person.looks();
    let choice = face(&job, leg)
        .add
        .iter()
        .find(|choice| choice.name == kind);
    person.asks(choice.unwrap().says.clone())
}

fn size(item: ItemKind, size: SizeOf) -> Thing {
    Thing::Size {
        item,
        number: 1,
        size,
    }
}

fn tapes(person: &Person, thing: Thing, text: &str) -> Box<JobView> {
    person.asks(FieldBookRequest::OpenPad {
        job: person.job,
        thing: Some(thing),
        blind: false,
    });
    person.types(text);
    person.books()
}

#[test]
fn a_pipe_added_on_a_face_waits_for_its_size_and_takes_it_from_the_keypad() {
    let person = rectangle();
    let job = adds(&person, 2, "Pipe");
    let pipe = item(&job, "pipe 1");
    assert_eq!(pipe.item.state, State::NotLooked);
    assert!(
        pipe.item.about.ends_with("size not read"),
        "{}",
        pipe.item.about
    );
    assert_eq!(pipe.item.read, Some(size(ItemKind::Pipe, SizeOf::Across)));
    let job = tapes(&person, size(ItemKind::Pipe, SizeOf::Across), "0' 3\"");
    let pipe = item(&job, "pipe 1");
    assert_eq!(
        (value(&pipe.item), pipe.item.state),
        ("3 in", State::ReadOnce)
    );
    let read_back = job.pad.read_back.as_ref();
    assert_eq!(read_back.unwrap().title, "Pipe 1 size");
    let told: Vec<&str> = pipe
        .item
        .story
        .iter()
        .map(|told| told.value.as_str())
        .collect();
    assert_eq!(told, ["3 in", "seen"]);
    let about = &pipe.item.story[0].about;
    assert!(about.starts_with("size, taped, "), "{about}");
}

#[test]
fn the_same_request_said_twice_adds_one_pipe_and_two_requests_add_two() {
    let person = rectangle();
    let say = |after| {
        person.asks(PlanRequest::AddItem {
            job: person.job,
            leg: 2,
            item: ItemKind::Pipe,
            after,
        })
    };
    say(0);
    assert_eq!(say(0).items.len(), 4);
    let job = say(1);
    let about = &item(&job, "pipe 2").item.about;
    assert!(
        about.contains("another pipe stands on this face: if it is the same one, strike one"),
        "{about}"
    );
}

#[test]
fn a_struck_item_stays_in_the_list_and_its_number_is_not_given_again() {
    let person = rectangle();
    let job = adds(&person, 2, "Box vent");
    let entry = item(&job, "box vent 1").item.story[0].entry;
    let job = person.strikes(entry);
    assert_eq!(item(&job, "box vent 1").item.state, State::Struck);
    let job = adds(&person, 2, "Box vent");
    assert_eq!(item(&job, "box vent 2").item.state, State::ReadOnce);
    person.undoes();
    assert_eq!(
        item(&person.undoes(), "box vent 1").item.state,
        State::ReadOnce
    );
}

#[test]
fn a_chimney_is_as_well_known_as_the_least_known_of_its_sizes() {
    let person = rectangle();
    adds(&person, 2, "Chimney");
    tapes(&person, size(ItemKind::Chimney, SizeOf::Width), "3'");
    let job = tapes(&person, size(ItemKind::Chimney, SizeOf::Depth), "2' 6\"");
    let chimney = item(&job, "chimney 1");
    assert_eq!(chimney.item.state, State::ReadOnce);
    assert!(chimney.item.about.ends_with("height not read"));
    assert_eq!(value(&chimney.item), "width 3 ft, depth 2 ft 6 in");
    assert_eq!(
        chimney.item.read,
        Some(size(ItemKind::Chimney, SizeOf::Height))
    );
    let yes = chimney.asks[0].choices[0].says.clone();
    let job = person.asks(yes);
    assert!(
        item(&job, "chimney 1")
            .item
            .about
            .contains("a saddle behind it")
    );
    assert!(item(&job, "chimney 1").asks[0].choices[0].chosen);
    let about = item(&person.undoes(), "chimney 1").item.about.clone();
    assert!(!about.contains("saddle"), "{about}");
}

#[test]
fn layers_seen_at_two_edges_that_differ_are_both_kept_and_the_most_is_said() {
    let person = rectangle();
    assert_eq!(item(&person.looks(), "layers").item.state, State::NotLooked);
    let say = |layers, leg| {
        person.asks(PlanRequest::Layers {
            job: person.job,
            layers: Some(layers),
            kind: None,
            leg,
        })
    };
    assert_eq!(item(&say(1, Some(1)), "layers").item.state, State::ReadOnce);
    let job = say(2, Some(3));
    let layers = item(&job, "layers");
    assert_eq!(
        (value(&layers.item), layers.item.state),
        ("2 layers", State::Suspect)
    );
    let job = say(1, Some(3));
    let layers = item(&job, "layers");
    assert_eq!(
        (value(&layers.item), layers.item.state),
        ("1 layer", State::Agreed)
    );
    let struck = layers
        .item
        .story
        .iter()
        .filter(|told| told.state == State::Struck);
    assert_eq!(struck.count(), 1);
}

#[test]
fn a_deck_of_planks_asks_for_its_gap_and_a_sheet_does_not() {
    let person = rectangle();
    let say = |kind| {
        person.asks(PlanRequest::Deck {
            job: person.job,
            kind,
            leg: Some(1),
        })
    };
    let sizes = |job: &JobView| -> Vec<String> {
        let sizes = item(job, "deck").sizes.iter();
        sizes.map(|size| size.name.clone()).collect()
    };
    assert_eq!(sizes(&say(DeckKind::Sheet)), ["thickness"]);
    assert_eq!(
        sizes(&say(DeckKind::Plank)),
        ["gap", "plank width", "thickness"]
    );
    person.asks(FieldBookRequest::OpenPad {
        job: person.job,
        thing: Some(Thing::DeckSize {
            size: DeckSizeOf::Gap,
        }),
        blind: false,
    });
    person.types("0' 0\" 1/4\"");
    assert_eq!(
        value(&item(&person.books(), "deck").item),
        "plank, gap 1/4 in"
    );
}

#[test]
fn a_pipe_is_read_in_inches_though_the_eaves_are_read_in_tenths() {
    let person = rectangle();
    adds(&person, 2, "Pipe");
    person.says(SettingsRequest::Set {
        setting: eavebook_app::request::Setting::Tape(TapeMarks::FeetTenths),
    });
    let open = |thing| {
        let job = person.asks(FieldBookRequest::OpenPad {
            job: person.job,
            thing: Some(thing),
            blind: false,
        });
        job.pad.open.unwrap().tape
    };
    assert_eq!(
        open(size(ItemKind::Pipe, SizeOf::Across)),
        TapeMarks::FeetInches
    );
    assert_eq!(open(Thing::Leg { leg: 1 }), TapeMarks::FeetTenths);
}

#[test]
fn a_pipe_is_found_by_its_name_with_its_size() {
    let person = rectangle();
    adds(&person, 2, "Pipe");
    tapes(&person, size(ItemKind::Pipe, SizeOf::Across), "0' 3\"");
    let found = person.searches("pipe").found;
    assert_eq!(found[0].thing.as_deref(), Some("pipe 1"));
    assert!(
        found[0].words.starts_with("Pipe 1: 3 in."),
        "{}",
        found[0].words
    );
}

#[test]
fn what_is_no_item_no_leg_and_no_count_is_refused_by_name() {
    let person = rectangle();
    let job = person.job;
    let refused: [Request; 6] = [
        FieldBookRequest::OpenPad {
            job,
            thing: Some(size(ItemKind::Flue, SizeOf::Across)),
            blind: false,
        }
        .into(),
        FieldBookRequest::OpenPad {
            job,
            thing: Some(Thing::Deck),
            blind: false,
        }
        .into(),
        PlanRequest::Saddle {
            job,
            number: 2,
            seen: SaddleObserved::Yes,
        }
        .into(),
        PlanRequest::AddItem {
            job,
            leg: 5,
            item: ItemKind::Pipe,
            after: 0,
        }
        .into(),
        PlanRequest::Layers {
            job,
            layers: Some(0),
            kind: None,
            leg: None,
        }
        .into(),
        PlanRequest::Layers {
            job,
            layers: None,
            kind: Some(" ".to_owned()),
            leg: None,
        }
        .into(),
    ];
    let said: Vec<String> = refused
        .into_iter()
        .map(|ask| person.is_refused(ask))
        .collect();
    assert_eq!(
        said,
        [
            "There is no flue 1 on this roof. Add it on the face where it stands.",
            "Deck is seen, not taped. Say what was seen in its own leaf under Items.",
            "There is no chimney 2 on this roof. Add it on the face where it stands.",
            "There is no leg 5. Legs count from 1, at most one past the last.",
            "0 is no count of layers. Say 1 to 4 as seen at a lifted edge, or leave it open.",
            "A kind of covering has 1 to 60 letters. Choose one of those in the rates.",
        ]
    );
    assert_eq!(person.looks().items.len(), 3);
}

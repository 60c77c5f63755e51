use crate::person::{Person, face, leg};
use eavebook_app::AboutPhoto;
use eavebook_app::reply::{JobView, Reply, State};
use eavebook_app::request::{FieldBookRequest, PlanRequest};
use eavebook_core::book::kinds::{PhotoFrom, PhotoPlace, PitchRead};

const JPEG: &[u8] = b"\xff\xd8\xff\xe0 a drawn picture";

fn about(person: &Person, of: Option<&str>) -> AboutPhoto {
    AboutPhoto {
        job: person.job,
        of: of.map(str::to_owned),
        from: PhotoFrom::Camera,
        heading: None,
        tilt: None,
        place: None,
        distance: None,
        said_aloud: false,
    }
}

fn keeps(person: &Person, bytes: &[u8], of: Option<&str>) -> Reply {
    person.app().keep_photo(bytes, &about(person, of))
}

fn is_refused(person: &Person, bytes: &[u8], of: Option<&str>) -> String {
    match keeps(person, bytes, of) {
        Reply::Refused(said) => said.en,
        other => panic!("{other:?}"),
    }
}

#[test]
fn a_photo_of_an_agreed_leg_proves_it() {
    let person = Person::begins();
    person.walks("60' out 30' out 60' out 30'");
    let Reply::Job(job) = keeps(&person, JPEG, Some("leg 2")) else {
        panic!()
    };
    assert_eq!(leg(&job, 2).state, State::Proved);
    assert_eq!(leg(&job, 1).state, State::Agreed);
    let photo = &job.photos[0];
    assert_eq!(
        (photo.thing.as_str(), photo.of.as_deref()),
        ("photo 1", Some("leg 2"))
    );
    assert!(photo.caption.starts_with("Leg 2, "), "{}", photo.caption);
    assert_eq!(leg(&job, 2).photos, std::slice::from_ref(&photo.sha256));
    let kept = person.app().photo(&photo.sha256).unwrap();
    assert_eq!((kept.media, kept.bytes.as_slice()), ("image/jpeg", JPEG));
    assert_eq!(job.undo.unwrap().words, "a photo of leg 2");
}

#[test]
fn the_same_photo_twice_is_one_photo() {
    let mut person = Person::begins();
    keeps(&person, JPEG, None);
    let Reply::Job(job) = keeps(&person, JPEG, None) else {
        panic!()
    };
    assert_eq!(job.photos.len(), 1);
    person.starts_the_program_again();
    assert_eq!(person.looks().photos, job.photos);
}

#[test]
fn what_is_no_picture_is_refused_and_not_kept() {
    let person = Person::begins();
    let said = "This file is no photo that can be kept. Bring a JPEG, PNG, WebP or HEIC picture.";
    assert_eq!(is_refused(&person, b"%PDF-1.7", None), said);
    assert_eq!(is_refused(&person, b"", None), said);
    assert_eq!(
        std::fs::read_dir(person.dir().join("photos"))
            .unwrap()
            .count(),
        0
    );
}

#[test]
fn a_photo_past_64_mib_is_refused_by_its_size() {
    let person = Person::begins();
    let mut large = JPEG.to_vec();
    large.resize(eavebook_app::LARGEST_PHOTO + 1, 0);
    let said = "This photo has 65 MiB; up to 64 MiB are kept. Take it smaller, or crop it.";
    assert_eq!(is_refused(&person, &large, None), said);
}

#[test]
fn a_photo_of_a_thing_that_is_not_there_is_refused() {
    let person = Person::begins();
    assert!(is_refused(&person, JPEG, Some("leg 9")).starts_with("There is no leg 9."));
    assert!(person.app().photo("../book.sqlite").is_none());
    assert!(person.app().photo(&"0".repeat(64)).is_none());
}

const SOUND: &[u8] = b"\x1a\x45\xdf\xa3 something said";

#[test]
fn what_was_said_aloud_waits_until_somebody_types_it_and_is_no_photo() {
    let mut person = Person::begins();
    person.walks("60' out");
    let aloud = AboutPhoto {
        said_aloud: true,
        ..about(&person, Some("leg 1"))
    };
    for _ in 0..2 {
        let told = person.app().keep_photo(SOUND, &aloud);
        assert!(matches!(told, Reply::Job(_)), "{told:?}");
    }
    person.starts_the_program_again();
    let job = person.looks();
    assert_eq!((job.clips.len(), job.photos.len()), (1, 0));
    let clip = &job.clips[0];
    assert!(clip.words.starts_with("Leg 1, said "), "{}", clip.words);
    let kept = person.app().photo(&clip.sha256).unwrap();
    assert_eq!((kept.media, kept.bytes.as_slice()), ("audio/webm", SOUND));
    let typed = FieldBookRequest::Strike {
        job: person.job,
        entry: clip.entry,
        reason: Some("typed".to_owned()),
    };
    assert!(person.asks(typed).clips.is_empty());
    assert!(
        person.app().photo(&clip.sha256).is_some(),
        "the sound is kept"
    );
}

#[test]
fn a_picture_is_no_sound_and_a_sound_no_picture() {
    let person = Person::begins();
    assert!(is_refused(&person, SOUND, None).starts_with("This file is no photo"));
    let aloud = AboutPhoto {
        said_aloud: true,
        ..about(&person, None)
    };
    let Reply::Refused(said) = person.app().keep_photo(JPEG, &aloud) else {
        panic!()
    };
    assert!(said.en.starts_with("This is no sound"), "{}", said.en);
}

#[test]
fn a_photo_of_what_stands_on_the_roof_is_one_of_the_roof_and_of_no_side() {
    let person = Person::begins();
    person.walks("60' out 30' out 60' out 30'");
    let Reply::Job(job) = keeps(&person, JPEG, Some("layers")) else {
        panic!()
    };
    assert_eq!(job.photos[0].place, Some(PhotoPlace::Roof));
    assert!(job.walk.unplaced.is_empty());
    assert!(job.check.open.iter().any(|card| card.thing == "sides"));
}

/// The photos on a card of the Leave-site check.
fn evidence(job: &JobView, card: &str) -> Vec<String> {
    let mut open = job.check.open.iter();
    let there = open.find(|item| item.thing == card);
    there.expect(card).photos.clone()
}

#[test]
fn a_photo_of_a_face_is_of_its_slope_and_proves_no_leg() {
    let person = Person::begins();
    person.walks("60' out 30' out 60' out 30' out");
    let Reply::Job(job) = keeps(&person, JPEG, Some("face 3")) else {
        panic!()
    };
    let photo = &job.photos[0];
    assert_eq!(photo.of.as_deref(), Some("face 3"));
    assert_eq!(photo.place, Some(PhotoPlace::Roof));
    assert_eq!(
        face(&job, 3).face.photos,
        std::slice::from_ref(&photo.sha256)
    );
    assert_eq!(leg(&job, 3).photos, [] as [&str; 0]);
    assert_eq!(leg(&job, 3).state, State::Agreed);
    assert_eq!(
        is_refused(&person, JPEG, Some("face 9")),
        is_refused(&person, JPEG, Some("leg 9"))
    );
}

#[test]
fn a_slope_read_at_two_places_with_a_photo_is_proved() {
    let person = Person::begins();
    person.walks("60' out 30' out 60' out 30' out");
    for rise_in in [6.0, 6.1] {
        person.asks(PlanRequest::Pitch {
            job: person.job,
            leg: 1,
            read: PitchRead::LevelAndTape {
                run_in: 12.0,
                rise_in,
            },
        });
    }
    assert_eq!(face(&person.looks(), 1).face.state, State::Agreed);
    keeps(&person, JPEG, Some("face 1"));
    assert_eq!(face(&person.looks(), 1).face.state, State::Proved);
    assert_eq!(face(&person.looks(), 3).face.state, State::NotLooked);
}

#[test]
fn each_card_of_the_check_shows_photos_of_what_it_is_about_and_of_nothing_else() {
    let person = Person::begins();
    person.walks("60' out 30' out 60' out 30' out");
    keeps(&person, JPEG, Some("leg 1"));
    assert_eq!(evidence(&person.looks(), "pitches"), [] as [&str; 0]);
    keeps(&person, b"\xff\xd8\xff\xe0 a slope", Some("face 1"));
    let job = person.looks();
    assert_eq!(evidence(&job, "pitches"), [job.photos[0].sha256.clone()]);
    assert_eq!(evidence(&job, "deck"), [] as [&str; 0]);
}

#[test]
fn a_gap_shows_the_tape_of_the_legs_in_question_and_of_no_other() {
    let person = Person::begins();
    person.walks("60' out 30' out 60' out 39' out");
    let job = person.looks();
    let suspects: Vec<&str> = job
        .readings
        .iter()
        .filter(|view| view.state == State::Suspect)
        .map(|view| view.thing.as_str())
        .collect();
    assert_eq!(suspects, ["leg 4", "leg 2"]);
    keeps(&person, JPEG, Some("leg 1"));
    assert_eq!(evidence(&person.looks(), "closure"), [] as [&str; 0]);
    keeps(&person, b"\xff\xd8\xff\xe0 a tape", Some("leg 4"));
    let job = person.looks();
    assert_eq!(evidence(&job, "closure"), [job.photos[0].sha256.clone()]);
}

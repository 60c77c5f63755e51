//! A gable end photographed from the ground, marked, and worked out to a pitch.

use crate::person::{Person, face};
use eavebook_app::AboutPhoto;
use eavebook_app::reply::{JobView, Reply, State};
use eavebook_app::request::PlanRequest;
use eavebook_core::book::kinds::{EndKind, GableMark, GableSpot, PhotoFrom};
use uuid::Uuid;

/// A phone's picture, upright.
const SIZE: [u32; 2] = [3024, 4032];
/// How far the camera looks up, degrees.
const LOOKS_UP: f64 = 6.0;

/// Where a point shows on a picture by a usual lens held `LOOKS_UP`, as shares of it. Feet to the
/// right of, before and above the camera.
fn shown([right, ahead, above]: [f64; 3]) -> [f64; 2] {
    let [width, height] = SIZE.map(f64::from);
    let focal = 27.0 / 43.266_615 * width.hypot(height);
    let (sin, cos) = LOOKS_UP.to_radians().sin_cos();
    let into = ahead * cos + above * sin;
    let up = above * cos - ahead * sin;
    [
        0.5 + focal * right / into / width,
        0.5 - focal * up / into / height,
    ]
}

/// A gable 30 ft wide, eaves 9.5 ft above the ground, seen from 45 ft and a height of 5.3 ft.
fn marks(in_12: f64) -> Vec<GableMark> {
    let (eave, ground) = (9.5 - 5.3, -5.3);
    [
        (GableSpot::LeftEave, [-15.0, 45.0, eave]),
        (GableSpot::Top, [0.0, 45.0, eave + 15.0 * in_12 / 12.0]),
        (GableSpot::RightEave, [15.0, 45.0, eave]),
        (GableSpot::LeftGround, [-15.0, 45.0, ground]),
        (GableSpot::RightGround, [15.0, 45.0, ground]),
    ]
    .map(|(of, place)| GableMark {
        of,
        at: shown(place),
    })
    .into()
}

fn house() -> Person {
    let person = Person::begins();
    person.walks("40' out 30' out 40' out 30' out");
    person
}

fn is_gable(person: &Person, leg: u32) {
    person.asks(PlanRequest::LegEnd {
        job: person.job,
        leg,
        end: EndKind::Gable,
    });
}

fn photographs(person: &Person) -> Box<JobView> {
    let about = AboutPhoto {
        job: person.job,
        of: Some("face 1".to_owned()),
        from: PhotoFrom::Camera,
        heading: None,
        tilt: Some(format!("{},0,0", 90.0 + LOOKS_UP)),
        place: None,
        distance: None,
        said_aloud: false,
    };
    match person.app().keep_photo(b"\xff\xd8\xff\xe0 a gable", &about) {
        Reply::Job(job) => job,
        other => panic!("{other:?}"),
    }
}

fn sights(person: &Person, photo: Uuid, marks: Vec<GableMark>) -> PlanRequest {
    PlanRequest::SightPitch {
        job: person.job,
        leg: 1,
        photo,
        size: SIZE,
        marks,
        after: face(&person.looks(), 1).slopes_before,
    }
}

#[test]
fn marks_on_a_gable_give_the_pitch_of_the_face_beside_it_with_its_doubt_and_its_caution() {
    for in_12 in [4.0, 8.0, 12.0] {
        let mut person = house();
        is_gable(&person, 2);
        let photo = photographs(&person).photos[0].entry;
        let request = sights(&person, photo, marks(in_12));
        let job = person.asks(request.clone());
        let told = face(&job, 1);
        let captured = told.captured.as_ref().unwrap();
        let degrees: f64 = captured.degrees.trim_end_matches('°').parse().unwrap();
        let truth = (in_12 / 12.0_f64).atan().to_degrees();
        assert!((degrees - truth).abs() < 0.6, "{degrees} of {truth}");
        let caution = &captured.sighted.as_ref().unwrap().en;
        assert!(caution.starts_with("± "), "{caution}");
        assert!(caution.contains("with a level and tape"), "{caution}");
        assert_eq!(told.face.state, State::ReadOnce);
        assert_eq!(told.face.story.len(), 1);
        assert!(told.face.story[0].about.starts_with("by marks on a photo"));

        // Said once more it is the same reading, and it is there after a restart.
        person.asks(request);
        person.starts_the_program_again();
        assert_eq!(face(&person.looks(), 1).face.story.len(), 1);
    }
}

#[test]
fn what_marks_cannot_tell_is_refused_with_the_remedy_and_changes_nothing() {
    let person = house();
    let photo = photographs(&person).photos[0].entry;
    assert_eq!(
        person.is_refused(sights(&person, photo, marks(8.0))),
        "Which end of this face is a gable? Say so at that face first: its leg is the width of \
         what is marked."
    );
    is_gable(&person, 4);
    let one = marks(8.0)[..1].to_vec();
    let refused = person.is_refused(sights(&person, photo, one));
    assert!(
        refused.contains("mark at least two eave corners"),
        "{refused}"
    );
    let mut wrong = marks(8.0);
    wrong[1].at = [0.9, 0.9];
    let refused = person.is_refused(sights(&person, photo, wrong));
    assert!(
        refused.contains("each mark") || refused.contains("marks fit no roof"),
        "{refused}"
    );
    let nobody = person.is_refused(sights(&person, Uuid::nil(), marks(8.0)));
    assert!(nobody.contains("photo"), "{nobody}");
    assert_eq!(face(&person.looks(), 1).face.story, []);
}

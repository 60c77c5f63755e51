use crate::person::Person;
use eavebook_app::reply::{PlanReply, Reply, SolidView};
use eavebook_app::request::{PlanRequest, SeenFrom};
use eavebook_core::book::kinds::PitchRead;

/// A rectangle walked with the building on the right, as the program begins: its front lies at the
/// greatest y of its own plan.
fn rectangle() -> Person {
    let person = Person::begins();
    person.walks("60' out 30' out 60' out 30'");
    person
}

fn solid(person: &Person, from: SeenFrom) -> SolidView {
    let job = person.job;
    match person.says(PlanRequest::Solid { job, from }) {
        Reply::Plan(PlanReply::Solid(view)) => *view,
        other => panic!("{other:?}"),
    }
}

#[test]
fn a_house_without_a_roof_is_an_empty_solid() {
    let view = solid(&rectangle(), SeenFrom::Front);
    assert!(view.painted.is_empty() && view.names.is_empty() && !view.walls_supposed);
}

#[test]
fn from_each_side_its_own_face_is_turned_to_the_viewer_and_the_opposite_one_is_not() {
    let person = rectangle();
    for leg in 1..=4 {
        let read = PitchRead::Number { in_12: 12.0 };
        let job = person.job;
        person.asks(PlanRequest::Pitch { job, leg, read });
    }
    let sides = [
        (SeenFrom::Front, "Front", "Back"),
        (SeenFrom::Right, "Right", "Left"),
        (SeenFrom::Back, "Back", "Front"),
        (SeenFrom::Left, "Left", "Right"),
    ];
    for (from, own, opposite) in sides {
        let view = solid(&person, from);
        assert!(
            view.faces.iter().any(|face| face == own),
            "{:?}",
            view.faces
        );
        assert!(
            !view.faces.iter().any(|face| face == opposite),
            "{:?}",
            view.faces
        );
        assert!(view.walls_supposed, "nobody read the eave height");
    }
    // The right end is narrow from there: its name may find no room, the list of faces has it.
    let corner = solid(&person, SeenFrom::StreetCorner);
    for own in ["Front", "Right"] {
        let seen = corner.faces.iter().any(|face| face == own);
        assert!(seen, "{:?}", corner.faces);
    }
    assert!(corner.names.iter().any(|one| one.name == "Front"));
}

//! What turned up once the old roof was off, as list items: how much, where, at what price, and
//! whether anybody agreed.

use crate::names;
use crate::parts::noted::{On, told};
use crate::parts::reply::{Figure, ThingView};
use crate::parts::solved_job::SolvedJob;
use crate::parts::things;
use crate::places::job_file::found::a_sheet;
use crate::places::job_file::reply::ChangesView;
use crate::places::plan::reply::FaceView;
use crate::sentence::{Sentence, sentence};
use eavebook_core::book::fold::Noted;
use eavebook_core::book::kinds::{ChangeFound, EndKind, Thing};
use eavebook_core::check::State;
use eavebook_core::units::Money;

/// The changes of a job, the newest first, and what the next one needs.
#[must_use]
pub fn view(seen: &SolvedJob, faces: &[FaceView]) -> ChangesView {
    let booked = seen.book.changes.iter();
    let next = booked.map(|noted| noted.what.number).max().unwrap_or(0) + 1;
    let next_thing = Thing::Change { number: next };
    let mut numbers: Vec<u32> = (1..next).collect();
    numbers.reverse();
    let changes = numbers
        .into_iter()
        .filter_map(|number| Some(one(seen, faces, standing(seen, number)?)))
        .collect();
    let sloped = faces
        .iter()
        .filter(|face| !matches!(face.end, Some(EndKind::Gable | EndKind::Wall)));
    ChangesView {
        changes,
        next,
        next_thing: names::name(&next_thing),
        next_photos: things::photos(seen, &next_thing),
        price: price(a_sheet(seen.book)),
        faces: sloped
            .map(|face| (face.leg, face.face.title.clone()))
            .collect(),
    }
}

/// A change as it stands, else as it was last struck: two devices may have booked one number each.
fn standing<'a>(seen: &SolvedJob<'a>, number: u32) -> Option<&'a Noted<ChangeFound>> {
    let of_it = |noted: &&Noted<ChangeFound>| noted.what.number == number;
    let mut booked = seen.book.changes.iter().filter(of_it).rev();
    let stands = booked.clone().find(|noted| noted.struck.is_none());
    stands.or_else(|| booked.next())
}

fn one(seen: &SolvedJob, faces: &[FaceView], noted: &Noted<ChangeFound>) -> ThingView {
    let change = &noted.what;
    let thing = change.thing();
    let photos = things::photos(seen, &thing);
    let state = match (&noted.struck, change.consent, photos.is_empty()) {
        (Some(_), _, _) => State::Struck,
        (None, true, false) => State::Proved,
        (None, true, true) => State::Agreed,
        (None, false, _) => State::ReadOnce,
    };
    let face = faces.iter().find(|face| face.leg == change.leg);
    let face = face.map_or_else(
        || format!("leg {}", change.leg),
        |face| face.face.title.clone(),
    );
    let story = seen.book.changes.iter().rev();
    let story = story
        .filter(|noted| noted.what.number == change.number)
        .map(|noted| {
            told(
                seen,
                &On::new(noted),
                sheets(noted.what.sheets),
                agreed(&noted.what),
            )
        })
        .collect();
    ThingView {
        thing: names::name(&thing),
        read: None,
        title: format!("{}, {face}", things::plain_title(&thing)),
        state,
        state_word: state.word().to_owned(),
        value: Some(Figure {
            words: sheets(change.sheets),
            give_or_take: change.amount().map(Money::words),
        }),
        about: format!(
            "{} under {face}, {}, {}, {}.",
            sheets(change.sheets),
            match change.a_sheet() {
                Some(price) => format!("{} a sheet laid", price.words()),
                None => "not priced".to_owned(),
            },
            agreed(change),
            match photos.len() {
                0 => "no photo".to_owned(),
                1 => "1 photo".to_owned(),
                many => format!("{many} photos"),
            }
        ),
        story,
        photos,
    }
}

/// `3 deck sheets`.
fn sheets(count: u32) -> String {
    match count {
        1 => "1 deck sheet".to_owned(),
        many => format!("{many} deck sheets"),
    }
}

fn agreed(change: &ChangeFound) -> String {
    match (change.consent, &change.by) {
        (true, Some(name)) => format!("agreed by {name}"),
        (true, None) => "agreed".to_owned(),
        (false, _) => "nobody agreed yet".to_owned(),
    }
}

fn price(a_sheet: Option<Money>) -> Sentence {
    match a_sheet {
        Some(price) => sentence(
            "sheet_price",
            format!("A sheet of deck, laid: {}.", price.words()),
        ),
        None => sentence(
            "sheet_not_priced",
            "A sheet of deck is not priced: its rate is blank. Say so before anybody agrees.",
        ),
    }
}

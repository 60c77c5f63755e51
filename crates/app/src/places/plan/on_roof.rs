//! What was seen on the roof: what stands out of it, what lies on it, what that is nailed to.

use crate::answer::Answer;
use crate::names;
use crate::open_job::OpenJob;
use crate::refusal::{Refusal, RequestRefusal};
use eavebook_core::book::kinds::{
    CoveringObserved, DeckKind, DeckObserved, ItemKind, Kind, ObservedOverLeg, PenetrationAdded,
    RoofObserved, SaddleObserved, Thing,
};
use eavebook_core::book::on_roof;
use eavebook_core::book::subject::{RoofQuestion, Subject};
use eavebook_store::Store;
use uuid::Uuid;

/// Something stands out of the face of a leg. `after`: items booked before it, so that the same
/// request said twice books once.
///
/// # Errors
/// `NoJob`, `NoLeg`.
pub fn add_item(
    book: &mut Store,
    job: Uuid,
    leg: u32,
    item: ItemKind,
    after: u32,
) -> Result<Answer, Refusal> {
    let opened = OpenJob::read(book, job)?;
    opened.check_leg(leg)?;
    let noted = &opened.book.penetrations;
    let since = noted.iter().skip(after as usize);
    let there = since
        .filter(|noted| noted.device == opened.device)
        .any(|noted| noted.what.item == item && noted.what.leg == leg);
    if !there {
        let same = noted.iter().filter(|noted| noted.what.item == item);
        let number = same.map(|noted| noted.what.number).max().unwrap_or(0) + 1;
        let seen = PenetrationAdded {
            item,
            number,
            leg,
            saddle: None,
        };
        opened.book(book, &Kind::Penetration(seen), Vec::new())?;
    }
    Ok(Answer::Job(job))
}

/// Whether a saddle stands behind a chimney.
///
/// # Errors
/// `NoJob`, `NoItem`.
pub fn saddle(
    book: &mut Store,
    job: Uuid,
    number: u32,
    seen: SaddleObserved,
) -> Result<Answer, Refusal> {
    let opened = OpenJob::read(book, job)?;
    let thing = Thing::Item {
        item: ItemKind::Chimney,
        number,
    };
    let standing = opened.book.penetrations.iter();
    let standing = standing.filter(|noted| noted.struck.is_none() && noted.what.thing() == thing);
    let earlier: Vec<_> = standing.collect();
    let last = earlier.last().ok_or_else(|| RequestRefusal::NoItem {
        name: names::name(&thing),
    })?;
    if last.what.saddle != Some(seen) {
        let told = PenetrationAdded {
            saddle: Some(seen),
            ..last.what.clone()
        };
        let earlier = earlier.iter().map(|noted| noted.entry).collect();
        opened.book(book, &Kind::Penetration(told), earlier)?;
    }
    Ok(Answer::Job(job))
}

/// The most layers that are asked for: a roof with more has never been seen by us.
const MOST_LAYERS: u32 = 4;
/// The longest name of a covering.
const LONGEST_KIND: usize = 60;

/// What lies on the roof, as seen at the edge of a leg, or at no place named. What is not said now
/// stays as it was said before of the same place.
///
/// # Errors
/// `NoJob`, `NoLeg`, `NoLayers`, `NoCovering`.
pub fn covering(
    book: &mut Store,
    job: Uuid,
    mut seen: CoveringObserved,
) -> Result<Answer, Refusal> {
    let opened = OpenJob::read(book, job)?;
    if let Some(leg) = seen.leg {
        opened.check_leg(leg)?;
    }
    if let Some(said) = seen
        .layers
        .filter(|layers| !(1..=MOST_LAYERS).contains(layers))
    {
        return Err(RequestRefusal::NoLayers { said }.into());
    }
    let fits = |kind: &String| (1..=LONGEST_KIND).contains(&kind.trim().chars().count());
    if !seen.kind.as_ref().is_none_or(fits) {
        return Err(RequestRefusal::NoCovering.into());
    }
    let standing = opened.book.coverings.iter();
    let mut standing =
        standing.filter(|noted| noted.struck.is_none() && noted.what.leg == seen.leg);
    let last = standing.next_back().map(|noted| noted.what.clone());
    if let Some(last) = &last {
        seen.layers = seen.layers.or(last.layers);
        seen.kind = seen.kind.or_else(|| last.kind.clone());
    }
    if last.as_ref() != Some(&seen) {
        let replaced = opened.book.replaced_by_new(&Subject::CoveringAt(seen.leg));
        opened.book(book, &Kind::Covering(seen), replaced)?;
    }
    Ok(Answer::Job(job))
}

/// What the covering is nailed to, as seen at the edge of a leg, or at no place named.
///
/// # Errors
/// `NoJob`, `NoLeg`.
pub fn deck(
    book: &mut Store,
    job: Uuid,
    kind: DeckKind,
    leg: Option<u32>,
) -> Result<Answer, Refusal> {
    let opened = OpenJob::read(book, job)?;
    if let Some(leg) = leg {
        opened.check_leg(leg)?;
    }
    let seen = DeckObserved { kind, leg };
    let standing = opened.book.decks.iter();
    let mut standing = standing.filter(|noted| noted.struck.is_none() && noted.what.leg == leg);
    if standing.next_back().map(|noted| &noted.what) != Some(&seen) {
        let replaced = opened.book.replaced_by_new(&Subject::DeckAt(leg));
        opened.book(book, &Kind::Deck(seen), replaced)?;
    }
    Ok(Answer::Job(job))
}

/// What was seen of the roof over a leg; of one sort the later stands in the place of the earlier.
///
/// # Errors
/// `NoJob`, `NoLeg`.
pub fn roof_seen(
    book: &mut Store,
    job: Uuid,
    leg: u32,
    over: ObservedOverLeg,
) -> Result<Answer, Refusal> {
    let opened = OpenJob::read(book, job)?;
    opened.check_leg(leg)?;
    let question = RoofQuestion::from(over);
    if on_roof::observed_over_leg(&opened.book, leg, question) != Some(over) {
        let replaced = opened
            .book
            .replaced_by_new(&Subject::RoofObservedAt(leg, question));
        opened.book(
            book,
            &Kind::RoofObserved(RoofObserved { leg, over }),
            replaced,
        )?;
    }
    Ok(Answer::Job(job))
}

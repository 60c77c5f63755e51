//! One job, whole: the one reply from which a screen draws.

use crate::job::reply::JobView;
use crate::job::you_were_here;
use crate::names;
use crate::open_job::OpenJob;
use crate::parts::comparison::{self, Comparison};
use crate::parts::reply::ThingView;
use crate::parts::roof::{self, Raised};
use crate::parts::solved_job::{self, SolvedJob};
use crate::parts::{cautions, copies, things};
use crate::places::check::{self, left};
use crate::places::field_book::{clips, closure, pad};
use crate::places::job_file::changes;
use crate::places::plan::reply::FaceView;
use crate::places::plan::{faces, items, sketch, totals};
use crate::places::{arrive, walk_round};
use crate::refusal::Refusal;
use crate::sentence::{Sentence, sentence};
use eavebook_core::check::Caution;
use eavebook_core::check::State;
use eavebook_core::pitch::Footing;
use eavebook_core::solve::Solved;
use eavebook_store::Store;
use uuid::Uuid;

/// One job, whole, as it stands on the disk.
///
/// # Errors
/// `NoJob`.
pub fn whole(store: &Store, job: Uuid) -> Result<JobView, Refusal> {
    Ok(view(&OpenJob::read(store, job)?))
}

/// A job as it is shown.
#[must_use]
pub fn view(opened: &OpenJob) -> JobView {
    let laid = opened.laid_out();
    let solved = solved_job::solve(&laid);
    let hidden = opened.draft.hidden();
    let seen = SolvedJob::new(opened, &laid, solved.as_ref(), hidden.as_ref());
    let raised = solved
        .as_ref()
        .and_then(|solved| Raised::new(&seen, solved));
    let judged = comparison::judged(&seen);
    let faces = faces::view(&seen, opened.job, raised.as_ref(), &judged);
    let items = items::view(&seen, opened.job);
    let pad = pad::view(opened, &seen);
    let photos = walk_round::view::photos(&opened.book, &laid);
    let left = left::view(&seen, &faces, &items, &photos);
    let copies = copies::words(opened.copies, opened.hub_message.as_deref());
    let check = check::view::view(&check::view::Parts {
        copies: &copies,
        seen: &seen,
        faces: &faces,
        items: &items,
        left: &left,
        photos: &photos,
        judged: &judged,
        at: opened.draft.check_at.clone(),
    });
    let in_hand = pad.open.as_ref().map(|open| &open.thing);
    JobView {
        job: opened.job,
        address: opened.book.address.clone(),
        pretend: opened.book.pretend,
        copies,
        you_were_here: you_were_here::you_were_here(&seen),
        undo: you_were_here::undo(&seen),
        redo: you_were_here::redo(&seen),
        settings: opened.settings.view(),
        readings: readings(&seen, &faces),
        closure: closure::view(&seen),
        plan: sketch::view(&seen, in_hand),
        edges: edges(&seen, raised.as_ref()),
        totals: totals::view(&seen, solved.as_ref(), raised.as_ref()),
        cautions: all_cautions(
            opened,
            solved.as_ref(),
            &near_another_shape(&seen, raised.as_ref()),
            &judged,
        ),
        arrive: arrive::view::view(&opened.book),
        check,
        whats_left: left,
        walk: walk_round::view::view(&opened.book, &photos),
        clips: clips::view(&seen),
        photos,
        changes: changes::view(&seen, &faces),
        items,
        faces,
        pad,
    }
}

/// Legs and ties, the newest first, then faces with a slope booked.
fn readings(seen: &SolvedJob, faces: &[FaceView]) -> Vec<ThingView> {
    let things = things::newest_first(seen);
    let mut readings: Vec<ThingView> = things
        .iter()
        .map(|thing| things::view(seen, thing))
        .collect();
    let read = faces.iter().filter(|face| !face.face.story.is_empty());
    readings.extend(read.map(|face| ThingView {
        // In the book the face's figure is what was read of it: its slope.
        value: face.pitch.clone(),
        title: format!("{} pitch", face.face.title),
        ..face.face.clone()
    }));
    readings
}

/// Legs in the order of the walk, then the edges of the roof.
fn edges(seen: &SolvedJob, raised: Option<&Raised>) -> Vec<ThingView> {
    let legs = things::all(seen).into_iter();
    let mut edges: Vec<ThingView> = legs.map(|thing| things::view(seen, &thing)).collect();
    let inner = raised.into_iter().flat_map(|raised| {
        raised.inner_edges().map(|edge| {
            let faces: Vec<String> = edge.legs.iter().map(|leg| raised.name_of(*leg)).collect();
            ThingView {
                thing: edge.name.clone(),
                read: None,
                title: edge.title.clone(),
                state: State::WorkedOut,
                state_word: State::WorkedOut.word().to_owned(),
                value: Some(roof::length(edge.length, edge.sigma, seen.round_to())),
                about: format!("where {} meet", names::listed(&faces)),
                story: Vec::new(),
                photos: Vec::new(),
            }
        })
    });
    edges.extend(inner);
    edges
}

/// What the readings allow besides the roof as drawn.
fn near_another_shape(seen: &SolvedJob, raised: Option<&Raised>) -> Vec<Sentence> {
    let spread = raised.and_then(Raised::spread);
    let pictures = spread.map_or(&[][..], |spread| spread.pictures.as_slice());
    pictures
        .iter()
        .map(|picture| cautions::other_picture(picture, seen.round_to()))
        .collect()
}

fn all_cautions(
    opened: &OpenJob,
    solved: Option<&Solved>,
    shapes: &[Sentence],
    judged: &[Comparison],
) -> Vec<Sentence> {
    let mut said: Vec<Sentence> = Vec::new();
    let found = solved
        .map(|solved| solved.cautions.as_slice())
        .unwrap_or_default();
    // A pitch from one place stands in what is left already.
    let is_left = |caution: &&Caution| {
        let one_place = Footing::OnePlace;
        !matches!(caution, Caution::PitchStands { on, .. } if *on == one_place)
    };
    said.extend(found.iter().filter(is_left).map(cautions::said));
    said.extend_from_slice(shapes);
    let flagged = judged.iter().filter(|judged| judged.is_flagged());
    said.extend(flagged.map(Comparison::said));
    let damaged = opened.damaged.iter();
    said.extend(damaged.map(|what| sentence("entry_damaged", names::capital(what))));
    if !opened.book.unknown.is_empty() {
        let count = match opened.book.unknown.len() {
            1 => "One entry is".to_owned(),
            many => format!("{many} entries are"),
        };
        let words =
            format!("{count} of a kind that this version does not know, and kept as it came.");
        said.push(sentence("entries_unknown", words));
    }
    said
}

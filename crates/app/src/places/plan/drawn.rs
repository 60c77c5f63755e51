//! The plan of a job whose line has come round: the drawing that the papers have, on a leaf of the
//! screen.

use crate::open_job::OpenJob;
use crate::parts::solved_job::{self, SolvedJob};
use crate::places::plan::reply::PlanDrawn;
use eavebook_core::drawing::Sheet;
use eavebook_packet::{Lang, Lengths, OnScreen, on_screen};
use eavebook_words::Language;

/// The room there is on the page.
#[derive(Clone, Copy, Debug)]
pub struct Room(Sheet);

impl Room {
    /// So wide, the house so high, with letters of this size; within what a screen can be.
    #[must_use]
    pub fn new(width: f64, tallest: f64, letters: f64) -> Room {
        let letters = letters.clamp(8.0, 96.0);
        Room(Sheet {
            width: width.clamp(120.0, 8_000.0),
            tallest: tallest.clamp(120.0, 8_000.0),
            letters,
            smallest: letters,
            least: letters,
        })
    }
}

/// The plan; none while the line is open.
#[must_use]
pub fn view(opened: &OpenJob, Room(sheet): Room) -> PlanDrawn {
    let laid = opened.laid_out();
    let solved = solved_job::solve(&laid);
    let hidden = opened.draft.hidden();
    let seen = SolvedJob::new(opened, &laid, solved.as_ref(), hidden.as_ref());
    let how = OnScreen {
        lang: match seen.language {
            Language::English => Lang::En,
            Language::Spanish => Lang::Es,
        },
        sheet,
        to: seen.round_to(),
        // Any other length would help to tell the one that is read again.
        lengths: if hidden.is_some() {
            Lengths::OutOfSight
        } else {
            Lengths::Written
        },
    };
    let plan = seen
        .is_shut()
        .then(|| on_screen(&seen.standing, seen.solved, how));
    let (height, left_off) = plan
        .as_ref()
        .map_or((0.0, 0), |plan| (plan.height, plan.left_off));
    let (svg, edges) = plan.map_or((None, Vec::new()), |plan| (Some(plan.svg), plan.edges));
    PlanDrawn {
        job: opened.job,
        svg,
        height,
        edges: edges.into_iter().collect(),
        left_off: u32::try_from(left_off).unwrap_or(u32::MAX),
    }
}

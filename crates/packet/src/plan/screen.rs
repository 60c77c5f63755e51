//! The plan on a leaf of the screen: called there as the lists beside it call everything.

use super::{house, left_off_es, title, words_in};
use crate::edition::Lang;
use crate::named::{NamedEdge, Parts};
use crate::words;
use eavebook_core::check::Standing;
use eavebook_core::drawing::{Ground, House, Sheet, Words, draw, listed, svg};
use eavebook_core::naming::FaceName;
use eavebook_core::solve::Solved;
use eavebook_core::units::{Length, RoundTo};

/// How a plan is drawn on a screen.
#[derive(Clone, Copy, Debug)]
pub struct OnScreen {
    /// The language of the page.
    pub lang: Lang,
    /// The room there is.
    pub sheet: Sheet,
    /// How finely lengths are written.
    pub to: RoundTo,
    /// Whether they are.
    pub lengths: Lengths,
}

/// Whether lengths are written.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Lengths {
    /// Along their edges.
    Written,
    /// Nowhere: something is being read again without sight of what was read before.
    OutOfSight,
}

/// A plan as a screen shows it.
#[derive(Clone, Debug, PartialEq)]
pub struct ScreenPlan {
    /// The text of an SVG element, in whatever the ink of its leaf is.
    pub svg: String,
    /// Height of it.
    pub height: f64,
    /// What each thing of the list of edges is called on it, with its length there: `leg 2` is
    /// `r2a 16' 9", r2b 16' 9"`.
    pub edges: Vec<(String, String)>,
    /// How many edges and faces had no room for their names.
    pub left_off: usize,
}

/// The plan of a job whose outline has come round.
#[must_use]
pub fn on_screen(job: &Standing, solved: Option<&Solved>, how: OnScreen) -> ScreenPlan {
    let parts = Parts::new(job, solved);
    // The list has one row for all faces that rise from a leg.
    let called = |place: usize| {
        let face = FaceName {
            letter: None,
            ..parts.faces[place].place
        };
        words::face_place(face, how.lang)
    };
    let written = |length: Length| short(length, how);
    let mut house = house(&parts, job, &called, &written);
    if how.lengths == Lengths::OutOfSight {
        for edge in &mut house.edges {
            edge.length = None;
        }
    }
    let words = words_on_page(how.lang);
    let drawing = draw(&house, &words, how.sheet);
    let described = listed(&house, &words).join("; ");
    ScreenPlan {
        svg: svg(&drawing, &title(job, how.lang), &described, Ground::Leaf),
        height: drawing.height,
        edges: edges(&parts, &house),
        left_off: drawing.unnamed_edges.len() + drawing.unnamed_faces.len(),
    }
}

/// `14' 3"`, `14.2 ft`, `4.34 m`.
fn short(length: Length, how: OnScreen) -> String {
    match how.to {
        RoundTo::Inch | RoundTo::EighthInch => words::marks(length),
        RoundTo::TenthFoot | RoundTo::HundredthFoot | RoundTo::Centimeter => {
            words::in_lang(&length.words(how.to), how.lang)
        }
    }
}

/// The page calls a face in Spanish what its lists call it.
fn words_on_page(lang: Lang) -> Words {
    match lang {
        Lang::En => Words::EN,
        Lang::Es => Words {
            every_face: |rise| format!("Cada agua: {rise} / 12"),
            left_off: |edges, faces| left_off_es(edges, faces, ["agua", "aguas"]),
            ..words_in(lang)
        },
    }
}

/// Every thing of the list with its edges on the drawing.
fn edges(parts: &Parts, house: &House) -> Vec<(String, String)> {
    let mut all: Vec<(String, String)> = Vec::new();
    for (named, drawn) in parts.edges.iter().zip(&house.edges) {
        let thing = thing(named);
        let said = match &drawn.length {
            // The list has the length of what is no leg.
            Some(length) if named.leg.is_some() => format!("{} {length}", drawn.name),
            Some(_) | None => drawn.name.clone(),
        };
        match all.iter_mut().find(|(of, _)| *of == thing) {
            Some((_, there)) => {
                there.push_str(", ");
                there.push_str(&said);
            }
            None => all.push((thing, said)),
        }
    }
    all
}

fn thing(named: &NamedEdge) -> String {
    match named.leg {
        Some(leg) => format!("leg {leg}"),
        None => named.name.clone(),
    }
}

//! What to look at and what to be careful of, in sentences.

use super::hearsay::{Compared, Reason};
use crate::outline::{ClosureState, Lack, Outline, Part};
use crate::pitch::{Footing, PitchChances, SettledRise, Unevenness, zero_jumps};
use crate::roof::{Roof, RoofCaution};
use crate::settled::{RoofUnavailable, SolvedBody};
use crate::survey::{PenetrationKind, Place, Survey};
use crate::units::{Angle, Pitch};
use std::fmt;

/// Something to look at. Its `Display` is a sentence; [`Caution::code`] names the kind.
#[derive(Clone, Debug, PartialEq)]
pub enum Caution {
    /// There is no roof yet.
    RoofUnavailable(RoofUnavailable),
    /// A leg was worked out from the others, so the loop proves nothing.
    NotChecked {
        /// Name of the body.
        body: String,
    },
    /// Something that no reading says, beside what keeps the roof from standing.
    Lacks {
        /// Name of the body.
        body: String,
        /// What.
        lack: Lack,
    },
    /// Nothing joins the parts of an outline.
    InParts {
        /// Name of the body.
        body: String,
        /// Each with its own sum.
        parts: Vec<Part>,
    },
    /// A figure of somebody else lies far from ours.
    Hearsay {
        /// Who said so.
        source: String,
        /// Theirs against ours, per cent of ours.
        percent: f64,
        /// What would account for it, likeliest first, with its chance.
        reason: Reason,
        /// Its chance.
        chance: f64,
    },
    /// Something about the shape of the roof.
    Roof(RoofCaution),
    /// The highest slope is over 8 in 12.
    OverEight {
        /// The highest slope.
        pitch: Pitch,
    },
    /// The lowest slope is under 4 in 12.
    UnderFour {
        /// The lowest slope.
        pitch: Pitch,
    },
    /// A slope that stands on too little.
    PitchStands {
        /// Where it was read.
        slope: Slope,
        /// On what it stands.
        on: Footing,
    },
    /// A slope whose places differ.
    PitchUneven {
        /// Where it was read.
        slope: Slope,
        /// How.
        how: Unevenness,
    },
    /// A flip that shows another zero error of the phone than the others do.
    PhoneAskew {
        /// Where it was read.
        slope: Slope,
        /// Which flip there, from 1.
        flip: usize,
        /// How far from the others.
        by: Angle,
    },
    /// A chimney wider than 30 in.
    WideChimney {
        /// Width, inches.
        inches: f64,
        /// Where it stands.
        at: Where,
    },
    /// More than one layer of covering.
    Layers {
        /// How many.
        layers: u32,
    },
    /// Gaps between planks that nails can miss.
    PlankGaps {
        /// Widest gap, inches.
        inches: f64,
    },
    /// A covering of asbestos-cement.
    AsbestosCement,
    /// A penetration that stands on no face.
    OnNoFace {
        /// What it is.
        what: &'static str,
        /// Where it stands.
        at: Where,
    },
}

/// A slope, by where it was read.
#[derive(Clone, Debug, PartialEq)]
pub struct Slope {
    /// Name of the body.
    pub body: String,
    /// The leg.
    pub leg: usize,
}

impl fmt::Display for Slope {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "leg {} of {}", self.leg, self.body)
    }
}

/// A roof over this is hard to stand on, rise in 12.
const HARD_TO_STAND_ON: f64 = 8.0;
/// Under this shingles want more under them, rise in 12.
const WANTS_DOUBLED: f64 = 4.0;
/// Gaps between planks wider than this want sheets over them, inches (common practice).
const WIDE_GAP: f64 = 0.25;
/// Comparisons of read figures allow for binary fractions.
const HAIR: f64 = 1e-9;

/// Everything about a survey that a person should look at.
#[must_use]
pub fn cautions(
    survey: &Survey,
    solved: &[SolvedBody],
    roof: &Result<Roof, RoofUnavailable>,
    hearsay: &[Compared],
) -> Vec<Caution> {
    let mut all = Vec::new();
    match roof {
        Err(lack) => all.push(Caution::RoofUnavailable(lack.clone())),
        Ok(roof) => all.extend(roof.cautions.iter().cloned().map(Caution::Roof)),
    }
    slopes(solved, &mut all);
    slopes_read(survey, solved, &mut all);
    for (body, solved) in survey.bodies.iter().zip(solved) {
        let closure = solved.outline.closure.as_ref();
        if closure.is_some_and(|closure| closure.state == ClosureState::NotChecked) {
            all.push(Caution::NotChecked {
                body: body.id.clone(),
            });
        }
        open_outline(&body.id, &solved.outline, roof, &mut all);
    }
    all.extend(hearsay.iter().filter(|said| said.warn).filter_map(|said| {
        Some(Caution::Hearsay {
            source: said.source.clone(),
            percent: said.difference_percent?,
            reason: said.reason?,
            chance: said.chance?,
        })
    }));
    for thing in &survey.penetrations {
        if let PenetrationKind::Chimney { width, .. } = thing.kind
            && thing.kind.holds_water_back()
        {
            all.push(Caution::WideChimney {
                inches: width.in_inches(),
                at: Where::new(thing.at, survey),
            });
        }
    }
    if let Some(layers) = survey
        .covering
        .as_ref()
        .and_then(|covering| covering.layers)
        && layers > 1
    {
        all.push(Caution::Layers { layers });
    }
    if let Some(gap) = survey.deck.as_ref().and_then(|deck| deck.gap)
        && gap.in_inches() > WIDE_GAP + HAIR
    {
        all.push(Caution::PlankGaps {
            inches: gap.in_inches(),
        });
    }
    if survey
        .covering
        .as_ref()
        .and_then(|covering| covering.kind.as_ref())
        .is_some_and(|kind| kind.to_lowercase().contains("asbestos"))
    {
        all.push(Caution::AsbestosCement);
    }
    if let Ok(roof) = roof {
        for thing in &survey.penetrations {
            if !roof.faces.iter().any(|face| face.carries(thing.at)) {
                all.push(Caution::OnNoFace {
                    what: thing.kind.name(),
                    at: Where::new(thing.at, survey),
                });
            }
        }
    }
    all
}

/// What lacks beside the one that is named already, and what it leaves without a bond.
fn open_outline(
    body: &str,
    outline: &Outline,
    roof: &Result<Roof, RoofUnavailable>,
    all: &mut Vec<Caution>,
) {
    let is_named = |lack: &Lack| match roof {
        Err(RoofUnavailable::OutlineOpen {
            body: named,
            lack: Some(named_lack),
            ..
        }) => named == body && **named_lack == *lack,
        Ok(_) | Err(_) => false,
    };
    for lack in outline.lacks.iter().filter(|lack| !is_named(lack)) {
        all.push(Caution::Lacks {
            body: body.to_owned(),
            lack: lack.clone(),
        });
    }
    if !outline.parts.is_empty() {
        all.push(Caution::InParts {
            body: body.to_owned(),
            parts: outline.parts.clone(),
        });
    }
}

/// Slopes count as soon as they are settled, roof or no roof.
fn slopes(solved: &[SolvedBody], all: &mut Vec<Caution>) {
    let used: Vec<Pitch> = solved
        .iter()
        .flat_map(|body| &body.rises)
        .flat_map(|rise| match rise {
            SettledRise::Slope(pitch) => vec![pitch.used],
            SettledRise::Bands(bands) => bands.iter().map(|band| band.pitch).collect(),
            SettledRise::Unknown | SettledRise::Gable | SettledRise::Wall => Vec::new(),
        })
        .collect();
    let by_rise = |a: &&Pitch, b: &&Pitch| a.in_12().total_cmp(&b.in_12());
    if let Some(pitch) = used.iter().max_by(by_rise)
        && pitch.in_12() > HARD_TO_STAND_ON + HAIR
    {
        all.push(Caution::OverEight { pitch: *pitch });
    }
    if let Some(pitch) = used.iter().min_by(by_rise)
        && pitch.in_12() < WANTS_DOUBLED - HAIR
    {
        all.push(Caution::UnderFour { pitch: *pitch });
    }
}

/// What the looks at each slope speak of, and the phone over all of them.
fn slopes_read(survey: &Survey, solved: &[SolvedBody], all: &mut Vec<Caution>) {
    let (mut flips, mut zero_errors) = (Vec::new(), Vec::new());
    for (slope, read) in slopes_of(survey, solved) {
        match read.footing {
            Footing::OnePlace | Footing::NearEaveOnly | Footing::PhotoAlone => {
                all.push(Caution::PitchStands {
                    slope: slope.clone(),
                    on: read.footing,
                });
            }
            Footing::Enough | Footing::TwoPlaces | Footing::OneAboveEave | Footing::ToldAlone => {}
        }
        all.extend(read.unevenness.map(|how| Caution::PitchUneven {
            slope: slope.clone(),
            how,
        }));
        for (flip, zero_error) in read.flips.iter().enumerate() {
            flips.push((slope.clone(), flip + 1));
            zero_errors.push(*zero_error);
        }
    }
    for (place, by) in zero_jumps(&zero_errors) {
        let (slope, flip) = flips[place].clone();
        all.push(Caution::PhoneAskew { slope, flip, by });
    }
}

/// Slopes that were read, where they were read.
fn slopes_of<'a>(
    survey: &'a Survey,
    solved: &'a [SolvedBody],
) -> impl Iterator<Item = (Slope, &'a PitchChances)> {
    survey.bodies.iter().zip(solved).flat_map(|(body, solved)| {
        solved.rises.iter().enumerate().filter_map(|(leg, rise)| {
            let SettledRise::Slope(pitch) = rise else {
                return None;
            };
            let read = pitch.read.as_ref().filter(|_| pitch.read_at == leg)?;
            let body = body.id.clone();
            Some((Slope { body, leg }, read))
        })
    })
}

impl Caution {
    /// A word for the kind of caution, by which a program or another language finds its own.
    #[must_use]
    pub fn code(&self) -> &'static str {
        match self {
            Caution::RoofUnavailable(_) => "no_roof",
            Caution::NotChecked { .. } => "not_checked",
            Caution::Lacks { .. } => "lacks_reading",
            Caution::InParts { .. } => "in_parts",
            Caution::Hearsay { .. } => "hearsay_apart",
            Caution::Roof(_) => "roof_shape",
            Caution::OverEight { .. } => "over_8_in_12",
            Caution::UnderFour { .. } => "under_4_in_12",
            Caution::PitchStands { on, .. } => match on {
                Footing::PhotoAlone => "pitch_from_photo_alone",
                Footing::NearEaveOnly => "pitch_near_eave_only",
                Footing::Enough
                | Footing::OnePlace
                | Footing::TwoPlaces
                | Footing::OneAboveEave
                | Footing::ToldAlone => "pitch_from_few_places",
            },
            Caution::PitchUneven { .. } => "pitch_uneven",
            Caution::PhoneAskew { .. } => "phone_askew",
            Caution::WideChimney { .. } => "wide_chimney",
            Caution::Layers { .. } => "layers",
            Caution::PlankGaps { .. } => "plank_gaps",
            Caution::AsbestosCement => "asbestos_cement",
            Caution::OnNoFace { .. } => "on_no_face",
        }
    }
}

impl fmt::Display for Caution {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Caution::RoofUnavailable(lack) => write!(f, "No roof yet: {lack}."),
            Caution::NotChecked { body } => write!(
                f,
                "A leg of {body} was worked out from the others, so its outline is not checked: read that leg or a tie."
            ),
            Caution::Lacks { body, lack } => {
                write!(f, "The outline of {body} lacks a reading: {lack}.")
            }
            Caution::InParts { body, parts } => {
                let parts: Vec<String> = parts.iter().map(ToString::to_string).collect();
                write!(
                    f,
                    "Nothing joins the {} parts of the outline of {body}: {}.",
                    parts.len(),
                    parts.join("; ")
                )
            }
            Caution::Hearsay {
                source,
                percent,
                reason,
                chance,
            } => {
                let side = if *percent < 0.0 { "less" } else { "more" };
                write!(
                    f,
                    "{source} says {:.0} per cent {side} than the readings: {reason}, {}. It moves no figure; look which is right.",
                    percent.abs(),
                    odds(*chance)
                )
            }
            Caution::Roof(caution) => roof_words(caution, f),
            Caution::OverEight { pitch } => write!(
                f,
                "A slope rises {} in 12, over 8 in 12: steep, easy to fall from. Stay off it without fall protection; local rules say which.",
                Plain(pitch.in_12())
            ),
            Caution::UnderFour { pitch } => write!(
                f,
                "A slope rises {} in 12, under 4 in 12: shingles there commonly want a doubled underlayment, and under 2 in 12 they are not commonly laid at all. Ask the code office.",
                Plain(pitch.in_12())
            ),
            Caution::PitchStands { slope, on } => write!(f, "The pitch at {slope}: {on}."),
            Caution::PitchUneven { slope, how } => write!(f, "The pitch at {slope}: {how}."),
            Caution::PhoneAskew { slope, flip, by } => write!(
                f,
                "The pitch at {slope}, flip {flip}: the phone's zero error stands {:.1} degrees off that of the other flips, so the phone lay askew, or it was another phone. Lay it again.",
                by.in_degrees().abs()
            ),
            Caution::WideChimney { inches, at } => write!(
                f,
                "The chimney {at} is {} in wide, over 30 in: a cricket or saddle behind it is commonly required. Ask the code office.",
                Plain(*inches)
            ),
            Caution::Layers { layers } => write!(
                f,
                "{layers} layers lie on the roof: a new one over them is commonly not allowed, and tearing off weighs more."
            ),
            Caution::PlankGaps { inches } => write!(
                f,
                "Gaps of {} in between planks are over 1/4 in: nails miss the wood there. An overlay of sheets is common practice.",
                Plain(*inches)
            ),
            Caution::AsbestosCement => write!(
                f,
                "The covering is said to be asbestos-cement: do not break, cut or sweep it. Stop, have it tested, and ask the local authority before any tear-off."
            ),
            Caution::OnNoFace { what, at } => {
                write!(f, "The {what} {at} is on no face: look at its place again.")
            }
        }
    }
}

/// A chance as odds: `about 9 to 1`.
fn odds(chance: f64) -> String {
    let odds = |chance: f64| (chance / (1.0 - chance).max(0.01)).clamp(1.0, 99.0);
    if chance >= 0.5 {
        format!("about {:.0} to 1", odds(chance))
    } else {
        format!("about {:.0} to 1 against", odds(1.0 - chance))
    }
}

fn roof_words(caution: &RoofCaution, f: &mut fmt::Formatter<'_>) -> fmt::Result {
    match caution {
        RoofCaution::GableAtInsideCorner { body, leg } => write!(
            f,
            "The gable at leg {leg} of {body} stands at an inside corner: are these two bodies?"
        ),
        RoofCaution::IdleWall { wall } => write!(
            f,
            "Wall {wall} lies along no gable or wall leg and changes nothing: look at its ends."
        ),
        RoofCaution::Sliver {
            body,
            leg,
            taken_by,
            width,
            length,
        } => write!(
            f,
            "A strip of the slope at leg {leg} of {body}, {} in wide and {} ft long, is not drawn: the slope at leg {taken_by} takes it, and the edges along it are left out. Read the legs beside it again if they matter.",
            Plain((width.in_feet() * 120.0).round() / 10.0),
            Plain(length.in_feet().round())
        ),
        RoofCaution::LevelValley { from, to } => {
            let [from, to] = [from.in_feet(), to.in_feet()];
            write!(
                f,
                "The valley from {}, {} to {}, {} is level: water stands in it.",
                Plain(from[0]),
                Plain(from[1]),
                Plain(to[0]),
                Plain(to[1])
            )
        }
    }
}

/// Where something stands, as a sentence says it: `at 12, 8`.
#[derive(Clone, Debug, PartialEq)]
pub enum Where {
    /// At a place in plan, feet.
    Plan(f64, f64),
    /// Over a leg, its place on the face not known.
    Leg {
        /// Name of the body.
        body: String,
        /// The leg.
        leg: usize,
    },
}

impl Where {
    /// Where a penetration of a survey stands.
    #[must_use]
    pub fn new(place: Place, survey: &Survey) -> Where {
        match place {
            Place::Plan(at) => Where::Plan(at.x, at.y),
            Place::FaceOf { body, leg } => Where::Leg {
                body: survey
                    .bodies
                    .get(body)
                    .map_or_else(String::new, |body| body.id.clone()),
                leg,
            },
        }
    }
}

impl fmt::Display for Where {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Where::Plan(x, y) => write!(f, "at {}, {}", Plain(*x), Plain(*y)),
            Where::Leg { body, leg } => write!(f, "over leg {leg} of {body}"),
        }
    }
}

/// A number without trailing zeros, to a thousandth.
struct Plain(f64);

impl fmt::Display for Plain {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let text = format!("{:.3}", self.0);
        f.write_str(text.trim_end_matches('0').trim_end_matches('.'))
    }
}

//! The result as a whole, and its parts that belong to no body.

use super::because::{self, Because};
use super::body::{BodyResult, body_result};
use super::caution::CautionResult;
use super::price::PriceResult;
use super::takeoff::TakeoffResult;
use crate::check::{Compared, MissingReading, ReadFirst, Unread, Why};
use crate::roof::{EdgeKind, Roof};
use crate::settled::Totals;
use crate::solve::{NotPriceable, Priced, Solved, judge_seen};
use crate::survey::Survey;
use crate::uncertainty::{Share, UncertaintySource};
use crate::units::{Area, Length, Point3};
use serde::Serialize;
use std::collections::BTreeMap;

/// The whole result.
#[derive(Clone, Debug, Serialize)]
pub struct ResultFile<'a> {
    bodies: Vec<BodyResult<'a>>,
    faces: Vec<FaceResult<'a>>,
    edges: Vec<EdgeResult<'a>>,
    totals: TotalsResult,
    /// The three that most decide the area's sigma.
    area_story: Vec<ShareResult<'a>>,
    retake_first: Vec<RetakeResult<'a>>,
    #[serde(rename = "would_help")]
    missing_readings: Vec<MissingReadingResult<'a>>,
    hearsay: Vec<HearsayResult<'a>>,
    /// What was seen of the roof beside the computed one; absent where nothing was.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    seen: Vec<SeenResult>,
    cautions: Vec<CautionResult>,
    /// For each total and each line of takeoff and price what made it: readings, slopes, known
    /// corners, penetrations, keys of rates and code profile.
    because: BTreeMap<String, Because<'a>>,
    #[serde(skip_serializing_if = "Option::is_none")]
    takeoff: Option<TakeoffResult<'a>>,
    #[serde(skip_serializing_if = "Option::is_none")]
    price: Option<PriceResult<'a>>,
}

#[derive(Clone, Debug, Serialize)]
struct ShareResult<'a> {
    #[serde(skip_serializing_if = "Option::is_none")]
    reading: Option<&'a str>,
    #[serde(skip_serializing_if = "Option::is_none")]
    pitch: Option<PitchPlace<'a>>,
    /// Square feet that one standard deviation of it moves the area by.
    square_feet: f64,
    /// Its part of the area's variance.
    part: f64,
}

#[derive(Clone, Debug, Serialize)]
struct FaceResult<'a> {
    body: &'a str,
    leg: usize,
    #[serde(skip_serializing_if = "Option::is_none")]
    band: Option<usize>,
    pitch: f64,
    plan_area: Area,
    area: Area,
    polygon: &'a [Point3],
    holes: &'a [Vec<Point3>],
}

#[derive(Clone, Debug, Serialize)]
struct EdgeResult<'a> {
    kind: &'static str,
    length: Length,
    from: Point3,
    to: Point3,
    faces: &'a [usize],
}

#[derive(Clone, Debug, Serialize)]
struct TotalsResult {
    plan_area: Option<f64>,
    area: Option<f64>,
    area_sigma: Option<f64>,
    squares: Option<f64>,
    #[serde(flatten)]
    edges: BTreeMap<&'static str, Option<f64>>,
}

#[derive(Clone, Debug, Serialize)]
struct PitchPlace<'a> {
    body: &'a str,
    leg: usize,
}

#[derive(Clone, Debug, Serialize)]
struct RetakeResult<'a> {
    #[serde(skip_serializing_if = "Option::is_none")]
    reading: Option<&'a str>,
    #[serde(skip_serializing_if = "Option::is_none")]
    pitch: Option<PitchPlace<'a>>,
    why: &'static str,
    /// What the area's sigma would be after a second look.
    area_sigma_after: Option<f64>,
    /// How well a second look tells the suspects apart, 0 to 1.
    separates: f64,
}

#[derive(Clone, Debug, Serialize)]
struct MissingReadingResult<'a> {
    body: &'a str,
    #[serde(flatten)]
    unread: UnreadResult,
    area_sigma_after: Option<f64>,
    /// How well it tells the suspects apart, 0 to 1.
    separates: f64,
}

#[derive(Clone, Debug, Serialize)]
#[serde(rename_all = "snake_case")]
enum UnreadResult {
    Leg(usize),
    Tie([usize; 2]),
    PitchOfLeg(usize),
    #[serde(untagged)]
    Overall {
        overall: [usize; 2],
        along_leg: usize,
    },
}

#[derive(Clone, Debug, Serialize)]
struct HearsayResult<'a> {
    source: &'a str,
    difference_percent: Option<f64>,
    explained: Option<bool>,
    /// What most likely makes it.
    reason: Option<String>,
    /// The chance of that reason.
    chance: Option<f64>,
    /// Further apart than the like of them lie.
    warn: bool,
}

#[derive(Clone, Debug, Serialize)]
struct SeenResult {
    /// `agrees`, `explained`, `flagged`, `not_compared`.
    judged: &'static str,
    words: String,
}

/// The result of a solved survey.
#[must_use]
pub fn result<'a>(survey: &'a Survey, solved: &'a Solved) -> ResultFile<'a> {
    let names: Vec<&str> = survey.bodies.iter().map(|body| body.id.as_str()).collect();
    let (faces, edges) = solved.roof.as_ref().map_or_else(
        |_| (Vec::new(), Vec::new()),
        |roof| {
            let faces = roof.faces.iter().map(|face| FaceResult {
                body: names[face.body],
                leg: face.leg,
                band: face.band,
                pitch: face.pitch.in_12(),
                plan_area: face.plan_area,
                area: face.area,
                polygon: &face.polygon,
                holes: &face.holes,
            });
            let edges = roof.edges.iter().map(|edge| EdgeResult {
                kind: edge.kind.key(),
                length: edge.length,
                from: edge.from,
                to: edge.to,
                faces: &edge.faces,
            });
            (faces.collect(), edges.collect())
        },
    );
    let variance = solved
        .totals
        .area
        .map(|area| area.sigma.in_square_feet().powi(2));
    let sigma_after = |gain: Option<f64>| Some((variance? - gain?).max(0.0).sqrt());
    ResultFile {
        bodies: survey
            .bodies
            .iter()
            .zip(&solved.bodies)
            .enumerate()
            .map(|(k, (body, solved_body))| {
                let proofs = solved.proofs.iter().filter(|proof| proof.body == k);
                let steeper = solved.steeper.iter().filter(|steeper| steeper.body == k);
                body_result(body, solved_body, proofs, &steeper.collect::<Vec<_>>())
            })
            .collect(),
        faces,
        edges,
        totals: totals_result(&solved.totals),
        area_story: solved
            .area_story
            .iter()
            .take(3)
            .map(|share| share_result(survey, share))
            .collect(),
        retake_first: solved
            .read_first
            .iter()
            .map(|first| retake_result(survey, first, sigma_after(first.gain)))
            .collect(),
        missing_readings: solved
            .missing_readings
            .iter()
            .map(|help| missing_reading_result(names[help.body], help, sigma_after(help.gain)))
            .collect(),
        hearsay: solved.hearsay.iter().map(hearsay_result).collect(),
        seen: judge_seen(survey, solved, survey)
            .iter()
            .map(|judged| SeenResult {
                judged: judged.key(),
                words: judged.to_string(),
            })
            .collect(),
        cautions: solved
            .cautions
            .iter()
            .map(|caution| CautionResult {
                code: caution.code(),
                words: caution.to_string(),
            })
            .collect(),
        takeoff: None,
        price: None,
        because: because::of_totals(survey, solved),
    }
}

impl<'a> ResultFile<'a> {
    /// The result with what the roof takes and costs.
    ///
    /// `roof`: the one that was taken off, which is the solved one or the one as it was meant.
    #[must_use]
    pub fn with_price(
        mut self,
        survey: &'a Survey,
        roof: &'a Roof,
        priced: &'a Priced,
    ) -> ResultFile<'a> {
        self.takeoff = Some(TakeoffResult::new(&priced.takeoff));
        self.price = Some(PriceResult::new(&priced.price));
        for body in &mut self.bodies {
            body.price_slips(|area| priced.price_moved_by(area));
        }
        self.because.extend(because::of_lines(survey, roof, priced));
        self
    }

    /// The result with one more caution: why there is no takeoff.
    #[must_use]
    pub fn without_price(mut self, why: &NotPriceable) -> ResultFile<'a> {
        // Why there is no roof is said already.
        if let NotPriceable::NoTakeoff(why) = why {
            self.cautions.push(CautionResult {
                code: "no_takeoff",
                words: format!("No takeoff: {why}."),
            });
        }
        self
    }
}

fn totals_result(totals: &Totals) -> TotalsResult {
    let known = totals.area.is_some();
    TotalsResult {
        plan_area: totals.plan_area.map(|area| area.in_square_feet()),
        area: totals.area.map(|area| area.value.in_square_feet()),
        area_sigma: totals.area.map(|area| area.sigma.in_square_feet()),
        squares: totals.area.map(|area| area.value.in_squares()),
        edges: EdgeKind::ALL
            .into_iter()
            .map(|kind| {
                let length = totals.edges.get(&kind).map_or(0.0, |sum| sum.in_feet());
                (kind.key(), known.then_some(length))
            })
            .collect(),
    }
}

fn share_result<'a>(survey: &'a Survey, share: &Share) -> ShareResult<'a> {
    let (reading, pitch) = match share.source {
        UncertaintySource::Reading { body, reading } => (
            Some(survey.bodies[body].readings[reading].id.as_str()),
            None,
        ),
        UncertaintySource::Pitch { body, leg } => {
            let body = survey.bodies[body].id.as_str();
            (None, Some(PitchPlace { body, leg }))
        }
    };
    ShareResult {
        reading,
        pitch,
        square_feet: share.area.in_square_feet(),
        part: share.part,
    }
}

fn retake_result<'a>(
    survey: &'a Survey,
    first: &ReadFirst,
    area_sigma_after: Option<f64>,
) -> RetakeResult<'a> {
    let (reading, pitch) = match first.again {
        UncertaintySource::Reading { body, reading } => (
            Some(survey.bodies[body].readings[reading].id.as_str()),
            None,
        ),
        UncertaintySource::Pitch { body, leg } => {
            let body = survey.bodies[body].id.as_str();
            (None, Some(PitchPlace { body, leg }))
        }
    };
    RetakeResult {
        reading,
        pitch,
        why: match first.why {
            Why::Suspect(_) => "suspect",
            Why::Unproved => "unproved",
            Why::Narrows => "narrows the area",
        },
        area_sigma_after,
        separates: first.separates,
    }
}

fn missing_reading_result<'a>(
    body: &'a str,
    help: &MissingReading,
    area_sigma_after: Option<f64>,
) -> MissingReadingResult<'a> {
    MissingReadingResult {
        body,
        unread: match help.unread {
            Unread::Leg(leg) => UnreadResult::Leg(leg),
            Unread::Tie(from, to) => UnreadResult::Tie([from, to]),
            Unread::Overall {
                from,
                to,
                along_leg,
            } => UnreadResult::Overall {
                overall: [from, to],
                along_leg,
            },
            Unread::Pitch(leg) => UnreadResult::PitchOfLeg(leg),
        },
        area_sigma_after,
        separates: help.separates,
    }
}

fn hearsay_result(compared: &Compared) -> HearsayResult<'_> {
    HearsayResult {
        source: &compared.source,
        difference_percent: compared.difference_percent,
        explained: compared.explained,
        reason: compared.reason.map(|reason| reason.to_string()),
        chance: compared.chance,
        warn: compared.warn,
    }
}

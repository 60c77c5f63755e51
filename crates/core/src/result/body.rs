//! One body of the result: corners, legs, suspects, closure, slopes.

use super::price::cents;
use crate::check::Proof;
use crate::outline::{ClosureState, SlipKind};
use crate::pitch::SettledRise;
use crate::settled::SolvedBody;
use crate::survey::Body;
use crate::uncertainty::SteeperWhenUnsure;
use crate::units::{Area, Length, Money};
use serde::Serialize;

#[derive(Clone, Debug, Serialize)]
pub(super) struct BodyResult<'a> {
    id: &'a str,
    corners: Vec<CornerResult>,
    legs: Vec<LegResult>,
    suspects: Vec<SuspectResult<'a>>,
    nothing_wrong: f64,
    unproved: Vec<&'a str>,
    /// How far the others check each reading.
    reliability: Vec<ReliabilityResult<'a>>,
    /// What no reading says.
    lacks: Vec<String>,
    /// Where the outline falls apart, each part with its own sum.
    parts: Vec<PartResult<'a>>,
    /// How rough the work was by its own repeats; 1 is the usual.
    roughness: f64,
    closure: Option<ClosureResult>,
    pitches: Vec<PitchResult>,
}

#[derive(Clone, Debug, Serialize)]
struct CornerResult {
    x: Option<f64>,
    y: Option<f64>,
    sigma: Option<f64>,
}

#[derive(Clone, Debug, Serialize)]
struct LegResult {
    leg: usize,
    length: Option<f64>,
    sigma: Option<f64>,
    redundancy: Option<f64>,
    smallest_slip: Option<f64>,
    worked_out: bool,
}

#[derive(Clone, Debug, Serialize)]
struct SuspectResult<'a> {
    reading: &'a str,
    kind: &'static str,
    likely_value: f64,
    probability: f64,
}

#[derive(Clone, Debug, Serialize)]
struct ClosureResult {
    along: Option<f64>,
    across: Option<f64>,
    state: &'static str,
    words: String,
    /// What closing says nothing about.
    cannot_see: Vec<String>,
}

#[derive(Clone, Debug, Serialize)]
struct ReliabilityResult<'a> {
    reading: &'a str,
    checked: String,
    smallest_slip: Option<f64>,
    /// What that slip would move the area by unnoticed; of a foot where nothing checks the reading.
    moves_area: Option<f64>,
    /// And the price; none before there is one.
    moves_price: Option<String>,
    words: String,
    #[serde(skip)]
    proof: &'a Proof,
}

impl BodyResult<'_> {
    /// With what slips that nobody notices would do to the price.
    pub(super) fn price_slips(&mut self, price_of: impl Fn(Area) -> Option<Money>) {
        for told in &mut self.reliability {
            let moves = told.proof.moves.and_then(&price_of);
            told.moves_price = moves.map(cents);
            told.words = told.proof.words(moves);
        }
    }
}

#[derive(Clone, Debug, Serialize)]
struct PartResult<'a> {
    corners: &'a [usize],
    along: f64,
    across: f64,
}

#[derive(Clone, Debug, Serialize)]
struct PitchResult {
    leg: usize,
    #[serde(skip_serializing_if = "Option::is_none")]
    band: Option<usize>,
    pitch: f64,
    sigma_deg: f64,
    chances: Vec<ChanceResult>,
    steeper_when_unsure: f64,
    #[serde(skip_serializing_if = "Option::is_none")]
    positions: Option<usize>,
    #[serde(skip_serializing_if = "Option::is_none")]
    zero_error_deg: Option<f64>,
    /// The leg at which it was read or given, where it was taken over from there and not read here.
    #[serde(skip_serializing_if = "Option::is_none")]
    taken_from_leg: Option<usize>,
    #[serde(flatten)]
    looks: Option<LooksResult>,
}

/// What stands behind a pitch that was read.
#[derive(Clone, Debug, Serialize)]
struct LooksResult {
    looks: usize,
    /// On what it stands: only `enough_places` carries its chances in per cent.
    stands_on: &'static str,
    words: String,
    unevenness: Option<String>,
    when_unsure: Option<WhenUnsureResult>,
}

/// What taking the steeper pitch costs, and what it is good for.
#[derive(Clone, Debug, Serialize)]
struct WhenUnsureResult {
    pitch: f64,
    too_low: f64,
    too_low_likeliest: f64,
    more_area: Option<f64>,
    more_percent: f64,
}

#[derive(Clone, Debug, Serialize)]
struct ChanceResult {
    pitch: f64,
    chance: f64,
}

pub(super) fn body_result<'a>(
    body: &'a Body,
    solved: &'a SolvedBody,
    proofs: impl Iterator<Item = &'a Proof>,
    steeper: &[&SteeperWhenUnsure],
) -> BodyResult<'a> {
    let outline = &solved.outline;
    let id_of = |reading: usize| body.readings[reading].id.as_str();
    BodyResult {
        id: &body.id,
        corners: outline
            .corners
            .iter()
            .map(|corner| CornerResult {
                x: corner.map(|corner| unsigned_zero(corner.at.x)),
                y: corner.map(|corner| unsigned_zero(corner.at.y)),
                sigma: corner.map(|corner| corner.sigma.in_feet()),
            })
            .collect(),
        legs: outline
            .legs
            .iter()
            .enumerate()
            .map(|(leg, figure)| LegResult {
                leg,
                length: figure.length.map(|length| length.value.in_feet()),
                sigma: figure.length.map(|length| length.sigma.in_feet()),
                redundancy: figure.redundancy,
                smallest_slip: figure.smallest_slip.map(Length::in_feet),
                worked_out: figure.worked_out,
            })
            .collect(),
        suspects: outline
            .suspects
            .named
            .iter()
            .map(|suspect| SuspectResult {
                reading: id_of(suspect.reading),
                kind: slip_kind(suspect.kind),
                likely_value: suspect.likely_value.in_feet(),
                probability: suspect.probability,
            })
            .collect(),
        nothing_wrong: outline.suspects.nothing_wrong,
        unproved: outline
            .readings
            .iter()
            .enumerate()
            .filter(|(_, figure)| figure.is_unproved())
            .map(|(reading, _)| id_of(reading))
            .collect(),
        reliability: proofs
            .map(|proof| ReliabilityResult {
                reading: id_of(proof.reading),
                checked: proof.checked.to_string(),
                smallest_slip: proof.smallest_slip.map(|slip| slip.in_feet()),
                moves_area: proof.moves.map(|area| area.in_square_feet()),
                moves_price: None,
                words: proof.to_string(),
                proof,
            })
            .collect(),
        lacks: outline.lacks.iter().map(ToString::to_string).collect(),
        parts: outline
            .parts
            .iter()
            .map(|part| PartResult {
                corners: &part.corners,
                along: unsigned_zero(part.sum[0].in_feet()),
                across: unsigned_zero(part.sum[1].in_feet()),
            })
            .collect(),
        roughness: outline.roughness,
        closure: outline.closure.as_ref().map(|closure| ClosureResult {
            along: closure.along.map(Length::in_feet),
            across: closure.across.map(Length::in_feet),
            state: closure_state(closure.state),
            words: closure.words.to_string(),
            cannot_see: closure.cannot_see.iter().map(ToString::to_string).collect(),
        }),
        pitches: solved
            .rises
            .iter()
            .enumerate()
            .flat_map(|(leg, rise)| pitch_results(leg, rise, steeper))
            .collect(),
    }
}

/// -0.0 prints as it is, and nobody wants to read it.
fn unsigned_zero(feet: f64) -> f64 {
    feet + 0.0
}

fn pitch_results(
    leg: usize,
    rise: &SettledRise,
    steeper: &[&SteeperWhenUnsure],
) -> Vec<PitchResult> {
    let exact = |band: Option<usize>, pitch: f64| PitchResult {
        leg,
        band,
        pitch,
        sigma_deg: 0.0,
        chances: vec![ChanceResult { pitch, chance: 1.0 }],
        steeper_when_unsure: pitch,
        positions: None,
        zero_error_deg: None,
        taken_from_leg: None,
        looks: None,
    };
    match rise {
        SettledRise::Slope(pitch) => {
            let taken_from_leg = (pitch.read_at != leg).then_some(pitch.read_at);
            let Some(read) = &pitch.read else {
                let given = exact(None, pitch.used.in_12());
                return vec![PitchResult {
                    taken_from_leg,
                    ..given
                }];
            };
            let when_unsure = steeper.iter().find(|steeper| steeper.leg == pitch.read_at);
            vec![PitchResult {
                leg,
                band: None,
                pitch: pitch.used.in_12(),
                sigma_deg: pitch.sigma.in_degrees(),
                chances: read
                    .chances
                    .iter()
                    .map(|(pitch, chance)| ChanceResult {
                        pitch: pitch.in_12(),
                        chance: *chance,
                    })
                    .collect(),
                steeper_when_unsure: read.steeper_when_unsure.in_12(),
                positions: Some(read.positions),
                zero_error_deg: read.zero_error.map(|angle| angle.in_degrees()),
                taken_from_leg,
                looks: Some(LooksResult {
                    looks: read.looks,
                    stands_on: read.footing.code(),
                    words: read.words(),
                    unevenness: read.unevenness.map(|uneven| uneven.to_string()),
                    when_unsure: when_unsure.map(|steeper| WhenUnsureResult {
                        pitch: steeper.pitch.in_12(),
                        too_low: steeper.too_low,
                        too_low_likeliest: steeper.too_low_likeliest,
                        more_area: steeper.more_area.map(|area| area.in_square_feet()),
                        more_percent: steeper.more_percent,
                    }),
                }),
            }]
        }
        SettledRise::Bands(bands) => bands
            .iter()
            .enumerate()
            .map(|(k, band)| exact(Some(k), band.pitch.in_12()))
            .collect(),
        SettledRise::Unknown | SettledRise::Gable | SettledRise::Wall => Vec::new(),
    }
}

fn slip_kind(kind: SlipKind) -> &'static str {
    match kind {
        SlipKind::Tens => "tens",
        SlipKind::OneFoot => "one_foot",
        SlipKind::Transposed => "transposed",
        SlipKind::InchesForTenths => "inches_for_tenths",
        SlipKind::Overhang => "overhang",
        SlipKind::Reversed => "reversed",
        SlipKind::Other => "other",
    }
}

fn closure_state(state: ClosureState) -> &'static str {
    match state {
        ClosureState::Open => "open",
        ClosureState::Closes => "closes",
        ClosureState::Gap => "gap",
        ClosureState::NotChecked => "not_checked",
    }
}

//! A survey solved: adjust, settle pitches, raise, total, check.

use crate::check::{
    Caution, Compared, MissingReading, Proof, ReadFirst, cautions, compare, missing_readings,
    proofs, read_first,
};
use crate::outline::{AdjustError, Outline, adjust};
use crate::pitch::settle;
use crate::roof::{Gradient, Roof, raise, spread};
use crate::settled::{
    CrossCovariance, Ground, RoofUnavailable, SolvedBody, Totals, put_in_place, shapes, total,
};
use crate::survey::Survey;
use crate::uncertainty;
use crate::uncertainty::{
    AreaVariance, LengthSpread, RaisedHouse, Share, SteeperWhenUnsure, shares, steeper_when_unsure,
    variance_of,
};
use crate::units::Area;

/// A survey with everything that is computed from it, step by step.
#[derive(Clone, Debug)]
pub struct Solved {
    /// One a body, in the order of the survey.
    pub bodies: Vec<SolvedBody>,
    /// The roof over all bodies, or what it wants.
    pub roof: Result<Roof, RoofUnavailable>,
    /// How bodies that were found from one another move together.
    pub together: CrossCovariance,
    /// One standard deviation of the area of each face, in the order of the roof's faces.
    pub face_sigmas: Vec<Area>,
    /// Areas and lengths, as far as they are known.
    pub totals: Totals,
    /// What decides the area's spread, the most first.
    pub area_story: Vec<Share>,
    /// How far each reading is checked, in the order of the survey.
    pub proofs: Vec<Proof>,
    /// Readings and slopes by what a second look at them would gain, the dearest first.
    pub read_first: Vec<ReadFirst>,
    /// What nobody read that would help.
    pub missing_readings: Vec<MissingReading>,
    /// What the steeper of two pitches would cost, one for each slope that was read.
    pub steeper: Vec<SteeperWhenUnsure>,
    /// Figures of others beside ours, in the order of the survey.
    pub hearsay: Vec<Compared>,
    /// What to look at.
    pub cautions: Vec<Caution>,
}

/// Solves a survey; its roof stands over outlines squared as they were meant.
///
/// A slip, a gap, a leg that nobody read and a slope that nobody looked at are no errors: what
/// cannot be known is left out and named.
///
/// # Errors
/// [`AdjustError`] if a sketch is no outline or a reading names what its outline does not have.
pub fn solve(survey: &Survey) -> Result<Solved, AdjustError> {
    solve_over(survey, Ground::Squared)
}

/// [`solve`], its roof over the ground of one's choice.
///
/// # Errors
/// As [`solve`].
pub fn solve_over(survey: &Survey, ground: Ground) -> Result<Solved, AdjustError> {
    let mut outlines = survey
        .bodies
        .iter()
        .map(adjust)
        .collect::<Result<Vec<Outline>, AdjustError>>()?;
    let together = put_in_place(&survey.bodies, &mut outlines);
    let bodies: Vec<SolvedBody> = survey
        .bodies
        .iter()
        .zip(outlines)
        .map(|(body, outline)| SolvedBody {
            rises: settle(&body.edges, outline.corners.len()),
            outline,
        })
        .collect();
    let no_roof = |refusal| RoofUnavailable::from_refusal(refusal, &survey.bodies);
    let raised = shapes(&survey.bodies, &bodies, ground).and_then(|shapes| {
        let roof = raise(&shapes, &survey.walls).map_err(no_roof)?;
        Ok((roof, spread(&shapes).map_err(no_roof)?))
    });
    let (roof, variance, face_sigmas) = match raised {
        Ok((roof, spread)) => {
            let sigma =
                |face: &Gradient| Area::square_feet(variance_of(&bodies, &together, face).sqrt());
            (
                Ok(roof),
                AreaVariance::from_gradient(&survey.bodies, &bodies, &together, &spread.area),
                spread.faces.iter().map(sigma).collect(),
            )
        }
        Err(lack) => {
            let plan = AreaVariance::in_plan(&survey.bodies, &bodies, &together);
            (Err(lack), plan, Vec::new())
        }
    };
    let totals = total(&bodies, &roof, variance.total());
    let area_story = shares(&survey.bodies, &bodies, &variance);
    let proofs = proofs(&survey.bodies, &bodies, &variance);
    let read_first = read_first(&survey.bodies, &bodies, &variance);
    let missing_readings = missing_readings(&survey.bodies, &bodies, &variance);
    let steeper = steeper_when_unsure(&bodies, &roof);
    let hearsay = compare(survey, &bodies, &totals);
    let cautions = cautions(survey, &bodies, &roof, &hearsay);
    Ok(Solved {
        bodies,
        roof,
        together,
        face_sigmas,
        totals,
        area_story,
        proofs,
        read_first,
        missing_readings,
        steeper,
        hearsay,
        cautions,
    })
}

/// Returns the spread of the lengths of a solved roof; `None` if there is no roof.
#[must_use]
pub fn length_spread(survey: &Survey, solved: &Solved) -> Option<LengthSpread> {
    let house = RaisedHouse {
        bodies: &solved.bodies,
        together: &solved.together,
        roof: solved.roof.as_ref().ok()?,
    };
    uncertainty::length_spread(survey, house)
}

use crate::house::{Bodies, House};
use eavebook_core::roof::{EdgeKind, Roof};
use eavebook_core::solve::{Solved, solve};
use eavebook_core::survey::{Span, Survey};

/// What a house says once it is solved.
#[derive(Clone, Debug)]
pub struct Told {
    /// What went in.
    pub survey: Survey,
    /// What came out.
    pub solved: Solved,
}

impl House {
    /// Solves this one body.
    #[must_use]
    pub fn solve(&self) -> Told {
        Told::of(self.survey())
    }
}

impl Bodies {
    /// Solves these bodies together.
    #[must_use]
    pub fn solve(&self) -> Told {
        Told::of(self.survey())
    }
}

impl Told {
    /// Solves a survey.
    ///
    /// # Panics
    /// A survey that is no survey is a mistake of the test.
    #[must_use]
    pub fn of(survey: Survey) -> Told {
        match solve(&survey) {
            Ok(solved) => Told { survey, solved },
            #[expect(clippy::panic, reason = "a mistake of the test must end it")]
            Err(refusal) => panic!("{refusal}"),
        }
    }

    /// Legs of the first body whose readings the others speak against, in order, each once.
    #[must_use]
    pub fn suspect_legs(&self) -> Vec<usize> {
        let named = &self.solved.bodies[0].outline.suspects.named;
        self.legs_of(named.iter().map(|suspect| suspect.reading))
    }

    /// Legs of the first body that hold a reading which nothing checks, in order, each once.
    #[must_use]
    pub fn unproved_legs(&self) -> Vec<usize> {
        let figures = self.solved.bodies[0].outline.readings.iter().enumerate();
        self.legs_of(
            figures
                .filter(|(_, figure)| figure.is_unproved())
                .map(|(reading, _)| reading),
        )
    }

    /// The roof.
    ///
    /// # Panics
    /// A house without one is a mistake of the test.
    #[must_use]
    pub fn roof(&self) -> &Roof {
        match &self.solved.roof {
            Ok(roof) => roof,
            #[expect(clippy::panic, reason = "a mistake of the test must end it")]
            Err(lack) => panic!("no roof: {lack}"),
        }
    }

    /// Area on the slope, sq ft; NaN without a roof.
    #[must_use]
    pub fn area(&self) -> f64 {
        self.solved
            .totals
            .area
            .map_or(f64::NAN, |area| area.value.in_square_feet())
    }

    /// One standard deviation of the area, sq ft; NaN without a roof.
    #[must_use]
    pub fn area_sigma(&self) -> f64 {
        self.solved
            .totals
            .area
            .map_or(f64::NAN, |area| area.sigma.in_square_feet())
    }

    /// Length of all edges of a kind, feet.
    #[must_use]
    pub fn length_of(&self, kind: EdgeKind) -> f64 {
        self.solved
            .totals
            .edges
            .get(&kind)
            .map_or(0.0, |length| length.in_feet())
    }

    /// What to look at, as sentences.
    #[must_use]
    pub fn cautions(&self) -> Vec<String> {
        let cautions = self.solved.cautions.iter();
        cautions.map(ToString::to_string).collect()
    }

    fn legs_of(&self, readings: impl Iterator<Item = usize>) -> Vec<usize> {
        let booked = &self.survey.bodies[0].readings;
        let mut legs: Vec<usize> = readings
            .filter_map(|reading| match booked[reading].span {
                Span::Leg(leg) | Span::WallOfLeg { leg, .. } => Some(leg),
                Span::Tie(..) | Span::Overall { .. } => None,
            })
            .collect();
        legs.sort_unstable();
        legs.dedup();
        legs
    }
}

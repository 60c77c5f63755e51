//! How a taped span follows the corners of its body.

use crate::outline::unit_vector;
use crate::settled::SolvedBody;
use crate::survey::{Body, Sketch, Span};
use crate::units::Angle;
use nalgebra::{DMatrix, DVector};

/// How a span changes with the corners of its body: one corner along a unit vector, another
/// against it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SpanRow {
    /// The corner at its end.
    pub to: usize,
    /// The corner at its start.
    pub from: usize,
    /// From start to end.
    pub along: [f64; 2],
}

impl SpanRow {
    /// Of a span as the outline came out; none while one of its corners is not known. An overall
    /// follows the nominal direction of its leg, as it was adjusted.
    #[must_use]
    pub fn new(span: Span, body: &Body, solved: &SolvedBody) -> Option<SpanRow> {
        let corners = &solved.outline.corners;
        let n = corners.len();
        let way = |from: usize, to: usize| {
            let (from, to) = (corners[from % n]?.at, corners[to % n]?.at);
            Some([to.x - from.x, to.y - from.y])
        };
        let along = |from: usize, to: usize| {
            let [x, y] = way(from, to)?;
            let length = x.hypot(y);
            (length > 0.0).then(|| [x / length, y / length])
        };
        let (from, to, along) = match span {
            Span::Leg(leg) | Span::WallOfLeg { leg, .. } => (leg, leg + 1, along(leg, leg + 1)?),
            Span::Tie(from, to) => (from, to, along(from, to)?),
            Span::Overall {
                from,
                to,
                along_leg,
            } => {
                let axis = match &body.outline {
                    Sketch::Known(_) => along(along_leg, along_leg + 1)?,
                    Sketch::Turned { heading, turns, .. } => {
                        let turned = turns.iter().take(along_leg).map(|turn| turn.in_degrees());
                        unit_vector(Angle::degrees(heading.in_degrees() + turned.sum::<f64>()))
                    }
                };
                let [x, y] = way(from, to)?;
                let sign = if x * axis[0] + y * axis[1] < 0.0 {
                    -1.0
                } else {
                    1.0
                };
                (from, to, [sign * axis[0], sign * axis[1]])
            }
        };
        Some(SpanRow {
            from: from % n,
            to: to % n,
            along,
        })
    }

    /// The four that are not zero among the 2n derivatives by corner.
    fn parts(&self) -> [(usize, f64); 4] {
        let [x, y] = self.along;
        let (from, to) = (2 * self.from, 2 * self.to);
        [(from, -x), (from + 1, -y), (to, x), (to + 1, y)]
    }

    /// What it changes by when the corners move like this.
    #[must_use]
    pub(crate) fn times(&self, moves: &DVector<f64>) -> f64 {
        let part = |(k, a): (usize, f64)| a * moves.get(k).copied().unwrap_or(0.0);
        self.parts().into_iter().map(part).sum()
    }

    /// Covariance of the corners times the row.
    #[must_use]
    pub(crate) fn carried(&self, covariance: &DMatrix<f64>) -> DVector<f64> {
        let mut sum = DVector::zeros(covariance.nrows());
        for (k, a) in self.parts() {
            sum.axpy(a, &covariance.column(k), 1.0);
        }
        sum
    }
}

//! The least squares of one photo: pose, focal length, slope, and what the plan may be off.

use super::camera::Lens;
use super::house::MarkedHouse;
use super::mark::Spot;
use nalgebra::{DMatrix, DVector, Matrix3, Rotation3, Vector3};

/// Places of the unknowns: turn 0..3, camera 3..6, log focal length, rise over run, eave height;
/// then two of each corner, of each peak, of the ground under each corner.
pub(super) const SLOPE: usize = 7;
pub(super) const HEIGHT: usize = 8;
const FIRST_PLAN: usize = 9;

/// A camera before a house.
#[derive(Clone, Debug)]
pub(super) struct State {
    /// Plan axes to the axes of the picture.
    pub turn: Rotation3<f64>,
    /// Where the camera stands, feet; the eaves are at height 0.
    pub camera: Vector3<f64>,
    pub log_focal: f64,
    /// Rise over run.
    pub slope: f64,
    /// Eaves above the ground, feet.
    pub height: f64,
    /// How far corners, peaks and feet lie off their plan, feet.
    pub off: Vec<f64>,
}

/// One photo to be adjusted.
pub(super) struct Bundle<'a> {
    pub seen: &'a MarkedHouse,
    pub lens: &'a Lens,
    /// Spread of a mark, pixels.
    pub mark_px: f64,
}

/// One row of the equations: residual over its spread, and how it changes.
struct Row {
    residual: f64,
    of: Vec<(usize, f64)>,
}

/// What came out.
pub(super) struct Fit {
    pub state: State,
    /// Weighted sum of squares.
    pub chi2: f64,
}

impl Bundle<'_> {
    fn corner_at(&self, corner: usize) -> usize {
        FIRST_PLAN + 2 * corner
    }

    fn peak_at(&self, peak: usize) -> usize {
        self.corner_at(self.seen.corners.len()) + 2 * peak
    }

    fn foot_at(&self, corner: usize) -> usize {
        self.peak_at(self.seen.peaks.len()) + 2 * corner
    }

    pub fn unknowns(&self) -> usize {
        self.foot_at(self.seen.corners.len())
    }

    pub fn has_feet(&self) -> bool {
        self.seen.count(|of| matches!(of, Spot::Foot(_))) > 0
    }

    /// Rows beyond the unknowns, both without those of the plan, which bring an unknown each.
    pub fn spare(&self) -> i32 {
        let rows = 2 * self.seen.marks.len()
            + 1
            + 2 * usize::from(self.lens.up.is_some())
            + usize::from(self.seen.eave_height.is_some());
        let unknowns = 8 + usize::from(self.has_feet() || self.seen.eave_height.is_some());
        rows as i32 - unknowns as i32
    }

    /// The place of a marked thing, and how it changes with the unknowns.
    fn place(&self, of: Spot, state: &State) -> (Vector3<f64>, Vec<(usize, Vector3<f64>)>) {
        let off = |at: usize| {
            let at = at - FIRST_PLAN;
            [state.off[at], state.off[at + 1]]
        };
        let (x, y) = (Vector3::x(), Vector3::y());
        match of {
            Spot::Eave(k) => {
                let (at, moved) = (self.corner_at(k), off(self.corner_at(k)));
                let plan = self.seen.corners[k].0;
                let place = Vector3::new(plan[0] + moved[0], plan[1] + moved[1], 0.0);
                (place, vec![(at, x), (at + 1, y)])
            }
            Spot::Foot(k) => {
                let (corner, mut of) = self.place(Spot::Eave(k), state);
                let (at, moved) = (self.foot_at(k), off(self.foot_at(k)));
                let place = corner + Vector3::new(moved[0], moved[1], -state.height);
                of.extend([(at, x), (at + 1, y), (HEIGHT, -Vector3::z())]);
                (place, of)
            }
            Spot::Peak(k) => {
                let peak = &self.seen.peaks[k];
                let (at, moved) = (self.peak_at(k), off(self.peak_at(k)));
                let over = Vector3::new(peak.over[0], peak.over[1], 0.0);
                let along = Vector3::new(-peak.over[1], peak.over[0], 0.0);
                let [from, to] = peak
                    .across
                    .map(|corner| self.place(Spot::Eave(corner), state));
                let across = to.0 - from.0;
                let run = across.norm() / 2.0;
                let plan = Vector3::new(peak.at[0], peak.at[1], state.slope * run);
                let place = plan + over * moved[0] + along * moved[1];
                let mut of = vec![(at, over), (at + 1, along), (SLOPE, Vector3::z() * run)];
                let longer = across.normalize() * (state.slope / 2.0);
                for (sign, corner) in [(-1.0, from.1), (1.0, to.1)] {
                    let rise = corner
                        .iter()
                        .map(|(at, way)| (*at, Vector3::z() * (sign * longer.dot(way))));
                    of.extend(rise);
                }
                (place, of)
            }
        }
    }

    /// How far a peak lies off its place across the ridge, and which unknown that is.
    pub fn off_middle(&self, peak: usize, state: &State) -> (usize, f64) {
        let at = self.peak_at(peak);
        (at, state.off[at - FIRST_PLAN])
    }

    /// Weighted sum of squares of the marks alone.
    pub fn chi2_of_marks(&self, state: &State) -> f64 {
        let of_marks = 2 * self.seen.marks.len();
        let rows = self.rows(state).unwrap_or_default();
        rows.iter()
            .take(of_marks)
            .map(|row| row.residual.powi(2))
            .sum()
    }

    /// Height of a peak above the eaves, and how it changes.
    pub fn rise(&self, peak: usize, state: &State) -> (f64, Vec<(usize, f64)>) {
        let (place, of) = self.place(Spot::Peak(peak), state);
        (place.z, of.iter().map(|(at, way)| (*at, way.z)).collect())
    }

    /// All rows; none where a marked thing lies behind the camera or a number is none.
    fn rows(&self, state: &State) -> Option<Vec<Row>> {
        let turn: &Matrix3<f64> = state.turn.matrix();
        let focal = state.log_focal.exp();
        let mut rows = Vec::with_capacity(2 * self.seen.marks.len() + self.unknowns());
        for mark in &self.seen.marks {
            let (place, of) = self.place(mark.of, state);
            let seen = turn * (place - state.camera);
            if seen.z.is_nan() || seen.z <= 1e-6 * self.seen.size {
                return None;
            }
            for axis in 0..2 {
                let at = focal * seen[axis] / seen.z;
                // How the pixel changes with the place in the axes of the picture.
                let mut by = Vector3::new(0.0, 0.0, -at / seen.z);
                by[axis] = focal / seen.z;
                by /= self.mark_px;
                let by_turn = seen.cross(&by);
                let by_place = turn.transpose() * by;
                let mut row = Vec::with_capacity(8 + of.len());
                row.extend((0..3).map(|k| (k, by_turn[k])));
                row.extend((0..3).map(|k| (3 + k, -by_place[k])));
                row.push((6, at / self.mark_px));
                row.extend(of.iter().map(|(k, way)| (*k, by_place.dot(way))));
                rows.push(Row {
                    residual: (self.lens.middle[axis] + at - mark.at[axis]) / self.mark_px,
                    of: row,
                });
            }
        }
        if let Some((up, sigma)) = &self.lens.up {
            let here = turn * Vector3::z();
            let (first, second) = across(up);
            for way in [first, second] {
                let by_turn = here.cross(&way) / *sigma;
                // A house upside down stands as level as one upright, and is none.
                let residual = if here.dot(up) > 0.0 {
                    way.dot(&here)
                } else {
                    2.0
                };
                rows.push(Row {
                    residual: residual / sigma,
                    of: (0..3).map(|k| (k, by_turn[k])).collect(),
                });
            }
        }
        let tied = |at: usize, off: f64, sigma: f64| Row {
            residual: off / sigma,
            of: vec![(at, sigma.recip())],
        };
        let off_focal = state.log_focal - self.lens.log_focal;
        rows.push(tied(6, off_focal, self.lens.log_focal_sigma));
        // An eave height that nothing speaks of is held loosely at itself, so that it can be solved.
        let [height, sigma] = match self.seen.eave_height {
            Some(known) => known,
            None if self.has_feet() => [state.height, 10.0 * self.seen.size],
            None => [state.height, self.seen.size],
        };
        rows.push(tied(HEIGHT, state.height - height, sigma));
        for (at, sigma) in self.plan_sigmas() {
            rows.push(tied(at, state.off[at - FIRST_PLAN], sigma));
        }
        Some(rows)
    }

    fn plan_sigmas(&self) -> impl Iterator<Item = (usize, f64)> {
        let seen = self.seen;
        let corners = seen.corners.iter().flat_map(|corner| [corner.1; 2]);
        let peaks = seen.peaks.iter().flat_map(|peak| peak.sigmas);
        let feet = seen.corners.iter().flat_map(|_| [seen.foot_sigma; 2]);
        (FIRST_PLAN..).zip(corners.chain(peaks).chain(feet))
    }

    /// Weighted sum of squares; infinite where there is none.
    fn chi2(&self, state: &State) -> f64 {
        let sum = self
            .rows(state)
            .map(|rows| rows.iter().map(|row| row.residual.powi(2)).sum::<f64>());
        sum.filter(|sum| sum.is_finite()).unwrap_or(f64::INFINITY)
    }

    /// Normal equations: matrix and right side.
    pub fn normal(&self, state: &State) -> Option<(DMatrix<f64>, DVector<f64>)> {
        let n = self.unknowns();
        let (mut matrix, mut right) = (DMatrix::zeros(n, n), DVector::zeros(n));
        for row in self.rows(state)? {
            for (a, by_a) in &row.of {
                right[*a] -= by_a * row.residual;
                for (b, by_b) in &row.of {
                    matrix[(*a, *b)] += by_a * by_b;
                }
            }
        }
        Some((matrix, right))
    }

    /// Goes down from a start (Levenberg 1944, Marquardt 1963); none where it leads nowhere.
    pub fn fit(&self, start: State) -> Option<Fit> {
        const MOST_STEPS: u32 = 60;
        let mut state = start;
        let mut chi2 = self.chi2(&state);
        let mut damping = 1e-3;
        for _ in 0..MOST_STEPS {
            let (matrix, right) = self.normal(&state)?;
            let mut damped = matrix;
            for k in 0..damped.nrows() {
                damped[(k, k)] *= 1.0 + damping;
            }
            let step = damped.cholesky()?.solve(&right);
            let next = state.moved(&step);
            let next_chi2 = self.chi2(&next);
            if next_chi2 < chi2 {
                let done = chi2 - next_chi2 < 1e-9 * (1.0 + next_chi2);
                (state, chi2) = (next, next_chi2);
                damping = (damping / 10.0).max(1e-12);
                if done {
                    break;
                }
            } else {
                damping *= 10.0;
                if damping > 1e8 {
                    break;
                }
            }
        }
        chi2.is_finite().then_some(Fit { state, chi2 })
    }
}

impl State {
    fn moved(&self, step: &DVector<f64>) -> State {
        State {
            turn: Rotation3::new(Vector3::new(step[0], step[1], step[2])) * self.turn,
            camera: self.camera + Vector3::new(step[3], step[4], step[5]),
            log_focal: self.log_focal + step[6].clamp(-1.0, 1.0),
            slope: self.slope + step[SLOPE],
            height: self.height + step[HEIGHT],
            off: self
                .off
                .iter()
                .zip(step.iter().skip(FIRST_PLAN))
                .map(|(off, step)| off + step)
                .collect(),
        }
    }
}

/// Two directions across another.
fn across(up: &Vector3<f64>) -> (Vector3<f64>, Vector3<f64>) {
    let least = if up.x.abs() < 0.6 {
        Vector3::x()
    } else {
        Vector3::y()
    };
    let first = up.cross(&least).normalize();
    (first, up.cross(&first))
}

#[cfg(test)]
mod tests {
    use super::super::camera::{Camera, turn};
    use super::super::house::GableEnd;
    use super::super::mark::Mark;
    use super::*;
    use crate::units::{Figure, Length};
    use nalgebra::Unit;

    fn seen_and_lens() -> (MarkedHouse, Lens) {
        let house = GableEnd {
            width: Figure {
                value: Length::feet(30.0),
                sigma: Length::feet(0.15),
            },
            top_off_middle: Length::feet(0.3),
        }
        .house();
        let mark = |x: f64, y: f64, of: Spot| Mark { at: [x, y], of };
        let marks = [
            mark(1010.0, 1500.0, Spot::Eave(0)),
            mark(2790.0, 1560.0, Spot::Eave(1)),
            mark(1890.0, 1040.0, Spot::Peak(0)),
            mark(1000.0, 2110.0, Spot::Foot(0)),
            mark(2790.0, 2080.0, Spot::Foot(1)),
        ];
        let seen = MarkedHouse::new(&house, &marks, [4000.0, 3000.0]).expect("sound marks");
        let lens = Lens::new(&Camera {
            width_px: 4000.0,
            height_px: 3000.0,
            focal_35: Some(26.0),
            up: Some([0.02, -0.99, 0.1]),
        });
        (seen, lens.expect("a camera"))
    }

    fn state(bundle: &Bundle<'_>) -> State {
        let up = Unit::new_normalize(Vector3::new(0.05, -0.98, 0.15));
        State {
            turn: turn(up, 0.1),
            camera: Vector3::new(20.0, -50.0, -4.0),
            log_focal: 3000.0_f64.ln(),
            slope: 0.45,
            height: 9.0,
            off: (FIRST_PLAN..bundle.unknowns())
                .map(|k| 0.01 * k as f64)
                .collect(),
        }
    }

    #[test]
    fn rows_change_as_differences_say() {
        let (seen, lens) = seen_and_lens();
        let bundle = Bundle {
            seen: &seen,
            lens: &lens,
            mark_px: 2.0,
        };
        let state = state(&bundle);
        let rows = bundle.rows(&state).expect("in front");
        let hair = 1e-6;
        for k in (0..bundle.unknowns()).filter(|k| *k != HEIGHT) {
            let moved = |by: f64| {
                let mut step = DVector::zeros(bundle.unknowns());
                step[k] = by;
                bundle.rows(&state.moved(&step)).expect("in front")
            };
            for ((row, more), less) in rows.iter().zip(moved(hair)).zip(moved(-hair)) {
                let stated: f64 = row
                    .of
                    .iter()
                    .filter(|(at, _)| *at == k)
                    .map(|(_, by)| by)
                    .sum();
                let found = (more.residual - less.residual) / (2.0 * hair);
                assert!(
                    (stated - found).abs() < 1e-3 * (1.0 + stated.abs()),
                    "unknown {k}: {stated} {found}"
                );
            }
        }
    }

    #[test]
    fn a_start_three_degrees_and_five_feet_off_comes_back() {
        let (seen, lens) = seen_and_lens();
        let bundle = Bundle {
            seen: &seen,
            lens: &lens,
            mark_px: 20.0,
        };
        let first = bundle.fit(state(&bundle)).expect("a fit");
        for (turned, gone) in [(3.0_f64, 5.0), (-3.0, -5.0)] {
            let turned = Vector3::new(turned, -turned, turned).map(f64::to_radians);
            let again = bundle.fit(State {
                turn: Rotation3::new(turned) * first.state.turn,
                camera: first.state.camera + Vector3::new(gone, -gone, gone),
                slope: first.state.slope + 0.2,
                ..first.state.clone()
            });
            let again = again.expect("a fit");
            assert!((again.state.slope - first.state.slope).abs() < 1e-5);
            assert!((again.chi2 - first.chi2).abs() < 1e-5 * (1.0 + first.chi2));
        }
    }
}

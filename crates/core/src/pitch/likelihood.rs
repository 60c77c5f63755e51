//! How likely the looks at one slope are at each slope it may have.
//!
//! One place on a roof is not the whole of it: boards sag, shingles curl, eaves kick out. So each
//! place is a fair sample of its face or an odd one, and all that was read near the eave is fair or
//! odd together: ten looks on one kick-out are one.

use super::looks::{READING_SIGMA, SlopeSample};

/// Spread of the zero error over phones, degrees (judged).
const ZERO_ERROR_SIGMA: f64 = 0.7;

/// How places that are no fair sample of their face are met.
struct Odd {
    /// Share of places.
    share: f64,
    /// What they read above the slope of the face on the average, degrees.
    above: f64,
    /// Spread about that, degrees.
    sigma: f64,
}

/// Anywhere on a face (judged).
const ODD_PLACE: Odd = Odd {
    share: 0.15,
    above: 0.0,
    sigma: 2.5,
};
/// Near the eave, where kick-outs make it flatter (judged).
const ODD_EAVE: Odd = Odd {
    share: 0.35,
    above: -1.5,
    sigma: 2.5,
};

/// What is known of the zero error of the phone.
pub(super) struct ZeroError {
    /// Best guess, degrees.
    pub mean: f64,
    /// Spread of the guess, degrees.
    pub sigma: f64,
    /// Whether a flip showed it.
    pub shown: bool,
}

impl ZeroError {
    /// Before any flip it is spread about nothing; each flip shows it with the spread of a mean
    /// of two readings.
    pub fn shown_by(looks: &[SlopeSample]) -> ZeroError {
        let mut weight = ZERO_ERROR_SIGMA.powi(-2);
        let mut sum = 0.0;
        let mut shown = false;
        for zero_error in looks.iter().filter_map(|look| look.zero_error) {
            let each = 2.0 / READING_SIGMA.powi(2);
            weight += each;
            sum += each * zero_error;
            shown = true;
        }
        ZeroError {
            mean: sum / weight,
            sigma: weight.sqrt().recip(),
            shown,
        }
    }
}

/// Likelihood of the looks at slopes close together.
pub(super) struct SlopeGrid {
    /// Slopes, degrees, rising.
    pub at: Vec<f64>,
    /// Likelihood at each, the greatest 1.
    pub likelihood: Vec<f64>,
}

/// Between slopes of the grid, degrees: a third of the narrowest spread, and sums over normal
/// curves are exact to many digits from half of it down.
const STEP: f64 = 0.1;
/// How far past the readings it goes, degrees.
const MARGIN: f64 = 9.0;
/// Zero errors over which one-way readings are integrated, by half a standard deviation.
const ZERO_ERRORS: i32 = 8;

impl SlopeGrid {
    pub fn around(looks: &[SlopeSample], zero: &ZeroError) -> SlopeGrid {
        let (low, high) = looks.iter().fold((90.0_f64, 0.0_f64), |(low, high), look| {
            (low.min(look.read), high.max(look.read))
        });
        // However the phone lay, a trade pitch stands within the grid.
        let low = (low - MARGIN).clamp(0.0, 75.0);
        let high = (high + MARGIN).clamp(5.0, 90.0);
        let at = grid(low, high);
        let reach = zero.mean.abs() + f64::from(ZERO_ERRORS) / 2.0 * zero.sigma;
        let curves = curves(looks, low, high, reach);
        let mut logs = vec![0.0; at.len()];
        for curve in curves.iter().filter(|curve| !curve.turns_with_zero()) {
            for (log, slope) in logs.iter_mut().zip(&at) {
                *log += curve.at(*slope);
            }
        }
        let turning: Vec<&LogCurve> = curves
            .iter()
            .filter(|curve| curve.turns_with_zero())
            .collect();
        add_turning(&mut logs, &at, &turning, zero);
        let best = logs.iter().copied().fold(f64::NEG_INFINITY, f64::max);
        let likelihood = logs.iter().map(|log| (log - best).exp()).collect();
        SlopeGrid { at, likelihood }
    }

    /// Places of the grid between two slopes.
    pub fn between(&self, low: f64, high: f64) -> std::ops::Range<usize> {
        let from = self.at.partition_point(|at| *at < low);
        from..self.at.partition_point(|at| *at <= high).max(from)
    }
}

fn grid(low: f64, high: f64) -> Vec<f64> {
    let mut at = Vec::new();
    let mut slope = low;
    while slope <= high {
        at.push(slope);
        slope += STEP;
    }
    at
}

/// Adds what depends on the zero error too, integrated over the one that all of it shares.
fn add_turning(logs: &mut [f64], at: &[f64], turning: &[&LogCurve], zero: &ZeroError) {
    if turning.is_empty() {
        return;
    }
    let mut each = Vec::new();
    for (log, slope) in logs.iter_mut().zip(at) {
        each.clear();
        each.extend((-ZERO_ERRORS..=ZERO_ERRORS).map(|half| {
            let off = f64::from(half) / 2.0;
            let zero_error = zero.mean + off * zero.sigma;
            let read: f64 = turning
                .iter()
                .map(|curve| curve.at(slope + curve.zero_factor * zero_error))
                .sum();
            read - 0.5 * off * off
        }));
        // Many readings make likelihoods too small for a number unless the best is taken out.
        let best = each.iter().copied().fold(f64::NEG_INFINITY, f64::max);
        let sum: f64 = each.iter().map(|log| (log - best).exp()).sum();
        *log += best + sum.ln();
    }
}

/// Log likelihood, along a grid, of looks that say something of the slope plus the same share of
/// the zero error; so each kind is summed once, however many readings there are.
struct LogCurve {
    /// How much of the zero error stands in what they read.
    zero_factor: f64,
    low: f64,
    logs: Vec<f64>,
}

/// One curve for the looks that are free of the zero error, one for each way round of a phone, one
/// for all near the eave. A curve that turns with the zero error goes `reach` further both ways.
fn curves(looks: &[SlopeSample], low: f64, high: f64, reach: f64) -> Vec<LogCurve> {
    let mut curves = Vec::new();
    for zero_factor in [0.0, 1.0, -1.0] {
        let apart: Vec<&SlopeSample> = looks
            .iter()
            .filter(|look| !look.is_near_eave() && (look.zero_sign - zero_factor).abs() < 0.5)
            .collect();
        if apart.is_empty() {
            continue;
        }
        let past = reach * f64::abs(zero_factor);
        curves.push(LogCurve::along(
            zero_factor,
            low - past,
            high + past,
            |slope| {
                apart
                    .iter()
                    .map(|look| place(look.read - slope, look.about_face(), &ODD_PLACE).ln())
                    .sum()
            },
        ));
    }
    let near_eave = looks.iter().filter(|look| look.is_near_eave());
    let (mut weight, mut read, mut zero_factor) = (0.0, 0.0, 0.0);
    for look in near_eave {
        let each = look.sigma.powi(-2);
        weight += each;
        read += each * look.read;
        zero_factor += each * look.zero_sign;
    }
    if weight > 0.0 {
        let (read, zero_factor) = (read / weight, zero_factor / weight);
        let sigma = weight.sqrt().recip().hypot(EAVE_SIGMA);
        let past = reach * zero_factor.abs();
        curves.push(LogCurve::along(
            zero_factor,
            low - past,
            high + past,
            |slope| place(read - slope, sigma, &ODD_EAVE).ln(),
        ));
    }
    curves
}

/// Spread of what is near the eave, where it does not kick out, about the face, degrees (judged).
const EAVE_SIGMA: f64 = 0.2;

impl LogCurve {
    fn along(zero_factor: f64, low: f64, high: f64, log: impl Fn(f64) -> f64) -> LogCurve {
        LogCurve {
            zero_factor,
            low,
            logs: grid(low, high).into_iter().map(log).collect(),
        }
    }

    fn turns_with_zero(&self) -> bool {
        self.zero_factor.abs() > 1e-9
    }

    /// Between two places of the grid, along a line.
    fn at(&self, slope: f64) -> f64 {
        let steps = ((slope - self.low) / STEP).max(0.0);
        let below = (steps as usize).min(self.logs.len().saturating_sub(1));
        let above = (below + 1).min(self.logs.len().saturating_sub(1));
        let share = (steps - below as f64).min(1.0);
        self.logs[below] + share * (self.logs[above] - self.logs[below])
    }
}

/// Likelihood of one place that reads `off` degrees above the slope of its face.
fn place(off: f64, sigma: f64, odd: &Odd) -> f64 {
    (1.0 - odd.share) * normal(off, sigma)
        + odd.share * normal(off - odd.above, odd.sigma.max(sigma))
}

pub(super) fn normal(off: f64, sigma: f64) -> f64 {
    (-0.5 * (off / sigma).powi(2)).exp() / sigma
}

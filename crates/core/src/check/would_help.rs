//! What nobody read that would help.

use super::read_first::row;
use crate::outline::default_sigma;
use crate::pitch::SettledRise;
use crate::roof::Roof;
use crate::solve::{AreaVariance, NoRoof, SolvedBody};
use crate::survey::{Body, Sketch, Span};

/// Something that nobody read.
#[derive(Clone, Debug, PartialEq)]
pub struct WouldHelp {
    /// Index of the body.
    pub body: usize,
    /// What.
    pub unread: Unread,
    /// What reading it would take off the variance of the area, sq ft squared; none where without
    /// it there is no area.
    pub gain: Option<f64>,
}

/// What can be read and was not.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Unread {
    /// A leg.
    Leg(usize),
    /// A tie across an inside corner: it can be taped from outside.
    Tie(usize, usize),
    /// What rises at a leg.
    Pitch(usize),
}

/// The usual spread of a reading hardly depends on its length, feet.
const USUAL_LEG: f64 = 30.0;

/// Legs and slopes that nobody read, and ties across inside corners that nobody took: what is
/// lacking for a roof first, then by what a reading takes off the area's variance.
#[must_use]
pub fn would_help(
    bodies: &[Body],
    solved: &[SolvedBody],
    roof: &Result<Roof, NoRoof>,
    variance: &AreaVariance,
) -> Vec<WouldHelp> {
    let mut all = Vec::new();
    for (k, (body, solved)) in bodies.iter().zip(solved).enumerate() {
        for (leg, rise) in solved.rises.iter().enumerate() {
            if matches!(rise, SettledRise::Unknown) {
                all.push(WouldHelp {
                    body: k,
                    unread: Unread::Pitch(leg),
                    gain: None,
                });
            }
        }
        for unread in unread_spans(body, solved) {
            let span = match unread {
                Unread::Leg(leg) => Span::Leg(leg),
                Unread::Tie(from, to) => Span::Tie(from, to),
                Unread::Pitch(_) => continue,
            };
            let gain = roof.as_ref().ok().and_then(|_| {
                variance.gain_of_reading(k, &row(span, solved)?, default_sigma(USUAL_LEG))
            });
            all.push(WouldHelp {
                body: k,
                unread,
                gain,
            });
        }
    }
    all.sort_by(|a, b| lack_then_gain(b).total_cmp(&lack_then_gain(a)));
    all
}

fn lack_then_gain(help: &WouldHelp) -> f64 {
    help.gain.unwrap_or(f64::INFINITY)
}

fn unread_spans(body: &Body, solved: &SolvedBody) -> Vec<Unread> {
    let Sketch::Turned { turns, .. } = &body.outline else {
        return Vec::new();
    };
    let n = turns.len();
    let whole: f64 = turns.iter().map(|turn| turn.in_degrees()).sum();
    let legs = solved
        .outline
        .legs
        .iter()
        .enumerate()
        .filter(|(_, leg)| leg.worked_out)
        .map(|(leg, _)| Unread::Leg(leg));
    let ties = turns
        .iter()
        .enumerate()
        .filter(|(_, turn)| turn.in_degrees() * whole < 0.0)
        .map(|(leg, _)| (leg, (leg + 2) % n))
        .filter(|ends| !has_tie(body, *ends))
        .map(|(from, to)| Unread::Tie(from, to));
    legs.chain(ties).collect()
}

fn has_tie(body: &Body, (from, to): (usize, usize)) -> bool {
    body.readings
        .iter()
        .any(|reading| reading.span == Span::Tie(from, to) || reading.span == Span::Tie(to, from))
}

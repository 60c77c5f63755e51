//! How unsure the lengths of a roof's edges and its area in plan are.
//!
//! The roof is raised again with each corner and each slope moved by a little, and the change of
//! every edge is carried by the covariance of what moved it. Near a change of shape that says
//! nothing, or too little: there the roof is raised over other readings ([`super::alternative`]). That
//! raises a hundred roofs, so it is a function of its own, for views that show edges one by one.

use super::alternative::{AlternativeTopology, LikelyLength, Moves, judge, likely_roofs};
use super::moves::{MOVE_DEG, MOVE_FT, unsure_pitches, with_corner, with_slope};
use crate::roof::{BodyShape, Edge, EdgeKind, Roof, raise};
use crate::settled::{CrossCovariance, Ground, SolvedBody, shapes};
use crate::survey::Survey;
use crate::units::{Area, Length, Point3};
use std::collections::{BTreeMap, BTreeSet};

/// One standard deviation of lengths and of the area in plan.
#[derive(Clone, Debug, PartialEq)]
pub struct LengthSpread {
    /// Of each edge, in the order of the roof's edges; none where the smallest move of a corner
    /// makes other faces meet there.
    pub edges: Vec<Option<Length>>,
    /// Of all edges of one kind together. Where other readings as likely make another shape, this
    /// is how far they fall from the length as drawn, in the root mean square.
    pub by_kind: BTreeMap<EdgeKind, Length>,
    /// Kinds of edge that other readings as likely make much longer or shorter.
    pub pictures: Vec<AlternativeTopology>,
    /// Of the area in plan.
    pub plan_area: Area,
}

/// The ends of one edge lie within this after such a move, feet.
const SAME_PLACE: f64 = 0.5;

/// Figures of one roof: each edge where it was found again, each kind, the area in plan.
struct Figures {
    edges: Vec<Option<f64>>,
    by_kind: Vec<Option<f64>>,
    plan_area: f64,
}

/// A house whose roof is raised.
#[derive(Clone, Copy, Debug)]
pub struct RaisedHouse<'a> {
    /// The bodies after the adjustment, in the order of the survey.
    pub bodies: &'a [SolvedBody],
    /// How bodies found from one another move together.
    pub together: &'a CrossCovariance,
    /// The roof over all bodies.
    pub roof: &'a Roof,
}

/// Returns the spread of the lengths; `None` if the outlines as they were meant carry no roof.
/// Pitches that share no reading are independent of each other, bodies unless one was found from
/// another.
#[must_use]
pub fn length_spread(survey: &Survey, house: RaisedHouse<'_>) -> Option<LengthSpread> {
    let roof = house.roof;
    let shapes = shapes(&survey.bodies, house.bodies, Ground::Squared).ok()?;
    let kinds: BTreeSet<EdgeKind> = roof.edges.iter().map(|edge| edge.kind).collect();
    let kinds: Vec<EdgeKind> = kinds.into_iter().collect();
    let moved = |shapes: &[BodyShape]| {
        let again = raise(shapes, &survey.walls).ok();
        again.map(|again| figures(roof, &again, &kinds))
    };
    let still = figures(roof, roof, &kinds);
    let mut sum = Variances::nothing(&still);
    let together = house.together;
    let mut pulls: Vec<Pull> = Vec::new();
    for (body, solved) in house.bodies.iter().enumerate() {
        let by_corner: Vec<Change> = (0..2 * shapes[body].corners.len())
            .map(|k| Change::between(&still, moved(&with_corner(&shapes, body, k)), MOVE_FT))
            .collect();
        sum.add_correlated(&by_corner, &by_corner, |k, l| {
            solved
                .outline
                .covariance
                .get((k, l))
                .copied()
                .unwrap_or(0.0)
        });
        let mut by_slope = BTreeMap::new();
        for (read_at, sigma) in unsure_pitches(&solved.rises) {
            let turned = with_slope(&shapes, body, &solved.rises, (read_at, MOVE_DEG));
            let change = Change::between(&still, moved(&turned), MOVE_DEG);
            let change = [change];
            sum.add_correlated(&change, &change, |_, _| sigma * sigma);
            let [change] = change;
            by_slope.insert(read_at, change);
        }
        pulls.push(Pull {
            by_corner,
            by_slope,
        });
    }
    for (one, pull) in pulls.iter().enumerate() {
        for (other, others) in pulls.iter().enumerate() {
            if one != other && together.binds(one, other) {
                let between = |k, l| together.between((one, k), (other, l));
                sum.add_correlated(&pull.by_corner, &others.by_corner, between);
            }
        }
    }
    let likely = likely_roofs(survey, house.bodies, &shapes);
    let is_followed = |kind: EdgeKind| {
        let mut edges = roof.edges.iter().zip(&sum.edges);
        edges.all(|(edge, variance)| edge.kind != kind || variance.is_some())
    };
    let mut by_kind = BTreeMap::new();
    let mut pictures = Vec::new();
    for kind in EdgeKind::ALL {
        let as_drawn = roof.length_of(kind).in_feet();
        let place = kinds.iter().position(|own| *own == kind);
        let followed = place.filter(|place| is_followed(kind) && sum.by_kind[*place].is_some());
        let lengths: Vec<LikelyLength> = likely
            .iter()
            .map(|(moves, likely)| LikelyLength {
                length: likely.length_of(kind).in_feet(),
                foreseen: as_drawn
                    + followed.map_or(0.0, |place| {
                        let pulled = pulls.iter().zip(moves);
                        pulled.map(|(pull, moves)| pull.of(place, moves)).sum()
                    }),
            })
            .collect();
        let variance = followed.and_then(|place| sum.by_kind[place]);
        let (sigma, picture) = judge(kind, as_drawn, variance, &lengths);
        if place.is_some() {
            by_kind.insert(kind, sigma);
        }
        pictures.extend(picture);
    }
    let sigma = |variance: f64| variance.max(0.0).sqrt();
    Some(LengthSpread {
        edges: sum
            .edges
            .iter()
            .map(|v| v.map(|v| Length::feet(sigma(v))))
            .collect(),
        by_kind,
        pictures,
        plan_area: Area::square_feet(sigma(sum.plan_area)),
    })
}

/// How the lengths follow what was measured of one body.
struct Pull {
    by_corner: Vec<Change>,
    by_slope: BTreeMap<usize, Change>,
}

impl Pull {
    /// What moves of the body change of all edges of one kind; nothing where that is not known.
    fn of(&self, kind: usize, moves: &Moves) -> f64 {
        let of = |change: &Change, by: f64| change.by_kind[kind].map_or(0.0, |pull| pull * by);
        let corners = self.by_corner.iter().zip(moves.corners.iter());
        let slopes = moves.slopes.iter().filter_map(|(read_at, degrees)| {
            let change = self.by_slope.get(read_at)?;
            Some(of(change, *degrees))
        });
        corners.map(|(change, by)| of(change, *by)).sum::<f64>() + slopes.sum::<f64>()
    }
}

/// Edges of `still` as they are found in `again`.
fn figures(still: &Roof, again: &Roof, kinds: &[EdgeKind]) -> Figures {
    Figures {
        edges: still
            .edges
            .iter()
            .map(|edge| found_again(still, edge, again))
            .collect(),
        by_kind: kinds
            .iter()
            .map(|kind| kind_found_again(still, *kind, again))
            .collect(),
        plan_area: again.plan_area().in_square_feet(),
    }
}

/// Length of all edges of a kind, where another roof has as many of them.
fn kind_found_again(still: &Roof, kind: EdgeKind, again: &Roof) -> Option<f64> {
    let count = |roof: &Roof| roof.edges.iter().filter(|edge| edge.kind == kind).count();
    (count(still) == count(again)).then(|| again.length_of(kind).in_feet())
}

/// Length of the edge of another roof that lies between the same faces in the same place.
fn found_again(still: &Roof, edge: &Edge, again: &Roof) -> Option<f64> {
    let faces = |roof: &Roof, edge: &Edge| {
        let named = edge.faces.iter().filter_map(|face| roof.faces.get(*face));
        let mut named: Vec<_> = named.map(|face| (face.body, face.leg, face.band)).collect();
        named.sort_unstable();
        named
    };
    let between = faces(still, edge);
    let apart = |a: Point3, b: Point3| {
        let (a, b) = (a.in_feet(), b.in_feet());
        (a[0] - b[0]).hypot(a[1] - b[1])
    };
    let off = |other: &Edge| {
        let same = apart(edge.from, other.from).max(apart(edge.to, other.to));
        let turned = apart(edge.from, other.to).max(apart(edge.to, other.from));
        same.min(turned)
    };
    let alike = again.edges.iter().filter(|other| other.kind == edge.kind);
    let alike = alike.filter(|other| off(other) < SAME_PLACE && faces(again, other) == between);
    alike
        .min_by(|a, b| off(a).total_cmp(&off(b)))
        .map(|other| other.length.in_feet())
}

/// What one move changes, by unit of the move.
struct Change {
    edges: Vec<Option<f64>>,
    by_kind: Vec<Option<f64>>,
    plan_area: f64,
}

impl Change {
    fn between(still: &Figures, moved: Option<Figures>, by: f64) -> Change {
        let Some(moved) = moved else {
            return Change {
                edges: vec![None; still.edges.len()],
                by_kind: vec![None; still.by_kind.len()],
                plan_area: 0.0,
            };
        };
        let by_unit = |(a, b): (&Option<f64>, &Option<f64>)| Some(((*b)? - (*a)?) / by);
        Change {
            edges: still.edges.iter().zip(&moved.edges).map(by_unit).collect(),
            by_kind: still
                .by_kind
                .iter()
                .zip(&moved.by_kind)
                .map(by_unit)
                .collect(),
            plan_area: (moved.plan_area - still.plan_area) / by,
        }
    }
}

/// Sums of variances.
struct Variances {
    edges: Vec<Option<f64>>,
    by_kind: Vec<Option<f64>>,
    plan_area: f64,
}

impl Variances {
    fn nothing(still: &Figures) -> Variances {
        Variances {
            edges: vec![Some(0.0); still.edges.len()],
            by_kind: vec![Some(0.0); still.by_kind.len()],
            plan_area: 0.0,
        }
    }

    /// Adds what moves that hang together change: `covariance` of move k of one set and l of another.
    fn add_correlated(
        &mut self,
        ones: &[Change],
        others: &[Change],
        covariance: impl Fn(usize, usize) -> f64,
    ) {
        let mut moves = Vec::new();
        for (k, one) in ones.iter().enumerate() {
            for (l, other) in others.iter().enumerate() {
                moves.push((one, other, covariance(k, l)));
            }
        }
        type Part = fn(&Change) -> &[Option<f64>];
        let parts: [(&mut Vec<Option<f64>>, Part); 2] = [
            (&mut self.edges, |change| &change.edges),
            (&mut self.by_kind, |change| &change.by_kind),
        ];
        for (sums, part) in parts {
            for (place, sum) in sums.iter_mut().enumerate() {
                let before = *sum;
                *sum = before.and_then(|before| {
                    moves
                        .iter()
                        .try_fold(before, |sum, (one, other, covariance)| {
                            Some(sum + part(one)[place]? * part(other)[place]? * covariance)
                        })
                });
            }
        }
        self.plan_area += moves
            .iter()
            .map(|(a, b, c)| a.plan_area * b.plan_area * c)
            .sum::<f64>();
    }
}

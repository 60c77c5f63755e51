//! The eaves move in, each at the run per rise of its own slope, with the height as the clock:
//! the straight skeleton with multiplicative weights.
//!
//! Aichholzer, Aurenhammer, Alberts and Gaertner, *A novel type of skeleton for polygons* (1995)
//! define the plain one; Biedl, Held, Huber, Kaaser and Palfrader, *Weighted straight skeletons in
//! the plane* (2015) say where weights make it ambiguous. Houses have right angles and equal
//! wings, so many events share a height and none is told apart by type: the fronts go to the next
//! height at which anything happens, every corner moves there, and the loop is cleaned as a
//! polygon ([`Fronts::clean`]). There is no queue to keep right.

use super::loops::{Contact, Corner, Front};
use super::plan::{Climb, Plan, Vec2};
use super::refusal::RaiseError;
use super::sweep::{Crease, Side, Strips, Sweep, lift};

/// Sine of the angle under which two fronts count as parallel.
const PARALLEL: f64 = 1e-9;
/// The same where they run at unequal speed: their corner would run off along them.
const PARALLEL_UNEQUAL: f64 = 1e-6;
/// Fronts whose speeds differ by less than this share move together.
const SAME_SPEED: f64 = 1e-9;
/// Places nearer than this are one, feet.
pub(super) const NEAR: f64 = 1e-7;
/// Heights whose difference is a smaller share are one height.
const SAME_HEIGHT: f64 = 1e-12;
/// Events allowed per leg before the fronts are given up.
const EVENTS_PER_LEG: usize = 50;

/// The fronts of one body under way.
pub(super) struct Fronts<'a> {
    pub plan: &'a Plan,
    pub strips: Strips,
}

/// What happens next to one loop of fronts, and after how much more height.
struct Next {
    rise: f64,
    contact: Option<Contact>,
}

/// Sweeps all fronts of a plan until nothing is left to sweep.
pub(super) fn sweep(plan: &Plan) -> Result<Sweep, RaiseError> {
    let mut fronts = Fronts {
        plan,
        strips: Strips::default(),
    };
    let mut open = vec![fronts.start()];
    let mut events = EVENTS_PER_LEG * plan.legs.len();
    while let Some(front) = open.pop() {
        if events == 0 {
            return Err(fronts.lost(&front));
        }
        events -= 1;
        open.extend(fronts.step(front)?);
    }
    let swept = fronts.strips.close();
    check_tiles(plan, &swept)?;
    Ok(swept)
}

impl Fronts<'_> {
    /// The loop at eave height: one front a leg.
    fn start(&mut self) -> Front {
        let corners = (0..self.plan.legs.len())
            .map(|leg| {
                let from = self.plan.legs[leg].from;
                let ends = [lift(from, 0.0), lift(self.plan.next(leg).from, 0.0)];
                let strip = self.strips.begin(self.plan, leg, 0, ends);
                let side = self.strips.side(strip);
                if let Side::Face(_) = side {
                    self.strips.crease(Crease {
                        from: ends[0],
                        to: ends[1],
                        left: side,
                        right: Side::Air(leg),
                        seam: None,
                    });
                }
                Corner {
                    at: from,
                    born: ends[0],
                    strip,
                }
            })
            .collect();
        Front {
            height: 0.0,
            corners,
        }
    }

    /// Takes one loop to its next event and gives the loops it falls into.
    fn step(&mut self, mut front: Front) -> Result<Vec<Front>, RaiseError> {
        let velocities = (0..front.corners.len())
            .map(|corner| self.velocity(&front, corner))
            .collect::<Result<Vec<Vec2>, RaiseError>>()?;
        let Some(next) = self.next(&front, &velocities) else {
            return Err(self.open_between(&front));
        };
        for (corner, velocity) in front.corners.iter_mut().zip(&velocities) {
            corner.at += velocity * next.rise;
        }
        front.height += next.rise;
        let mut parts = self.clean(front, next.contact);
        for part in &mut parts {
            if twice_area_of(part) < 0.0 {
                return Err(self.lost(part));
            }
            self.break_slopes(part);
        }
        Ok(parts)
    }

    fn speed(&self, strip: usize) -> f64 {
        self.plan.legs[self.strips.leg(strip)].speed(self.strips.band(strip))
    }

    /// How far a corner moves in plan per rise: it stays on both its fronts.
    fn velocity(&self, front: &Front, corner: usize) -> Result<Vec2, RaiseError> {
        let [before, after] = [front.strip_before(corner), front.corners[corner].strip];
        let (one, two) = (self.strips.leg(before), self.strips.leg(after));
        let (a, b) = (&self.plan.legs[one], &self.plan.legs[two]);
        let (fast_a, fast_b) = (self.speed(before), self.speed(after));
        let sine = a.along.perp(&b.along);
        let same_way = a.along.dot(&b.along) > 0.0;
        let same_speed = (fast_a - fast_b).abs() <= SAME_SPEED * fast_a.max(fast_b);
        if same_way && sine.abs() < PARALLEL_UNEQUAL && !same_speed {
            let (leg, other) = if a.number < b.number { (a, b) } else { (b, a) };
            return Err(RaiseError::Overtaking {
                body: self.plan.body.clone(),
                leg: leg.number,
                other: other.number,
                one: leg.in_words(),
                two: other.in_words(),
            });
        }
        if sine.abs() >= PARALLEL {
            return Ok(Vec2::new(
                fast_a * b.inward.y - fast_b * a.inward.y,
                fast_b * a.inward.x - fast_a * b.inward.x,
            ) / sine);
        }
        if same_way {
            // Any point of the common front would do; this one stays over its place on the leg.
            return Ok(a.inward * fast_a);
        }
        Err(self.lost(front))
    }

    /// The lowest event of a loop: a front shrinks to nothing, a corner meets a front that is not
    /// its own, or a slope ends and the next one begins.
    fn next(&self, front: &Front, velocities: &[Vec2]) -> Option<Next> {
        let count = front.corners.len();
        let mut next = Next {
            rise: f64::INFINITY,
            contact: None,
        };
        for side in 0..count {
            let end = (side + 1) % count;
            let strip = front.corners[side].strip;
            let leg = &self.plan.legs[self.strips.leg(strip)];
            let top = leg.top(self.strips.band(strip));
            if top - front.height < next.rise {
                next = Next {
                    rise: (top - front.height).max(0.0),
                    contact: None,
                };
            }
            let length = leg
                .along
                .dot(&(front.corners[end].at - front.corners[side].at));
            let shrinks = leg.along.dot(&(velocities[side] - velocities[end]));
            if shrinks > 0.0 && length.max(0.0) < next.rise * shrinks {
                next = Next {
                    rise: length.max(0.0) / shrinks,
                    contact: Some(Contact::Shrunk { side }),
                };
            }
        }
        for corner in 0..count {
            let [before, after] = [front.strip_before(corner), front.corners[corner].strip];
            let turn = self.plan.legs[self.strips.leg(before)]
                .along
                .perp(&self.plan.legs[self.strips.leg(after)].along);
            if turn > PARALLEL {
                continue;
            }
            for side in 0..count {
                if side != corner && (side + 1) % count != corner {
                    self.consider_split(front, velocities, [corner, side], &mut next);
                }
            }
        }
        next.rise.is_finite().then_some(next)
    }

    /// Whether a reflex corner meets a front, within its moving ends, before all else.
    fn consider_split(
        &self,
        front: &Front,
        velocities: &[Vec2],
        [corner, side]: [usize; 2],
        next: &mut Next,
    ) {
        let end = (side + 1) % front.corners.len();
        let strip = front.corners[side].strip;
        let leg = &self.plan.legs[self.strips.leg(strip)];
        let velocity = velocities[corner];
        let away = leg
            .inward
            .dot(&(front.corners[corner].at - front.corners[side].at));
        let speed = self.speed(strip);
        let closing = speed - leg.inward.dot(&velocity);
        let noise = 1e-12 * (1.0 + speed + velocity.norm());
        if away < -NEAR || closing <= noise || away.max(0.0) >= next.rise * closing {
            return;
        }
        let rise = away.max(0.0) / closing;
        let moved = |corner: usize| front.corners[corner].at + velocities[corner] * rise;
        let (start, place) = (moved(side), moved(corner));
        let along = leg.along.dot(&(place - start));
        let length = leg.along.dot(&(moved(end) - start));
        if along >= -NEAR && along <= length + NEAR {
            *next = Next {
                rise,
                contact: Some(Contact::Met { corner, side }),
            };
        }
    }

    /// Where a slope ends at this height the next one begins: a new face over the same leg.
    fn break_slopes(&mut self, front: &mut Front) {
        let count = front.corners.len();
        let breaks: Vec<bool> = (0..count)
            .map(|side| {
                let strip = front.corners[side].strip;
                let leg = &self.plan.legs[self.strips.leg(strip)];
                leg.top(self.strips.band(strip)) <= front.height * (1.0 + SAME_HEIGHT)
            })
            .collect();
        for corner in 0..count {
            if breaks[corner] || breaks[(corner + count - 1) % count] {
                let place = lift(front.corners[corner].at, front.height);
                self.end_trace(front, corner, place);
                front.corners[corner].born = place;
            }
        }
        for side in (0..count).filter(|&side| breaks[side]) {
            let ends = [side, (side + 1) % count]
                .map(|corner| lift(front.corners[corner].at, front.height));
            let below = front.corners[side].strip;
            let (leg, band) = (self.strips.leg(below), self.strips.band(below));
            let above = self.strips.begin(self.plan, leg, band + 1, ends);
            self.strips.crease(Crease {
                from: ends[0],
                to: ends[1],
                left: self.strips.side(above),
                right: self.strips.side(below),
                seam: None,
            });
            front.corners[side].strip = above;
        }
    }

    /// The refusal for fronts that cannot be followed.
    fn lost(&self, front: &Front) -> RaiseError {
        let leg = front
            .corners
            .first()
            .map_or(0, |corner| self.strips.leg(corner.strip));
        RaiseError::LostTrack {
            body: self.plan.body.clone(),
            leg: self.plan.legs[leg].number,
        }
    }

    /// The refusal for a loop in which nothing moves any more.
    fn open_between(&self, front: &Front) -> RaiseError {
        let mut legs: Vec<usize> = front
            .corners
            .iter()
            .map(|corner| &self.plan.legs[self.strips.leg(corner.strip)])
            .filter(|leg| matches!(leg.climb, Climb::Stands(_)))
            .map(|leg| leg.number)
            .collect();
        legs.sort_unstable();
        legs.dedup();
        let legs: Vec<String> = legs.iter().map(usize::to_string).collect();
        RaiseError::LeavesOpen {
            body: self.plan.body.clone(),
            legs: legs.join(", "),
        }
    }
}

fn twice_area_of(front: &Front) -> f64 {
    let ring: Vec<Vec2> = front.corners.iter().map(|corner| corner.at).collect();
    super::plan::twice_area(&ring)
}

/// Faces must tile the plan and no pitched leg may be without one: a last check that nothing went
/// missing, whatever the outline.
fn check_tiles(plan: &Plan, swept: &Sweep) -> Result<(), RaiseError> {
    let mut covered = 0.0;
    let mut has_face = vec![false; plan.legs.len()];
    for face in &swept.faces {
        let ring: Vec<Vec2> = face.ring.iter().map(|place| place.xy()).collect();
        let area = super::plan::twice_area(&ring) / 2.0;
        covered += area;
        has_face[face.leg] |= area > 0.0;
    }
    let lost = |leg: usize| {
        Err(RaiseError::LostTrack {
            body: plan.body.clone(),
            leg: plan.legs[leg].number,
        })
    };
    for (place, leg) in plan.legs.iter().enumerate() {
        if !has_face[place] && matches!(leg.climb, Climb::Slopes(_)) {
            return lost(place);
        }
    }
    if (covered - plan.area()).abs() > 1e-6 * plan.area() {
        return lost(0);
    }
    Ok(())
}

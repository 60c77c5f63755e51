//! A roof against what is expected of it.

use eavebook_core::roof::{BodyShape, EdgeKind, RaiseError, Roof};
use eavebook_core::units::Area;
use serde::Deserialize;
use std::collections::BTreeMap;

/// Share of a value by which it may differ besides the tolerance.
const SHARE: f64 = 1e-5;

#[derive(Deserialize)]
pub struct Expected {
    pub family: String,
    #[serde(flatten)]
    pub story: Story,
}

#[derive(Deserialize)]
#[serde(untagged)]
pub enum Story {
    Refused { refusal: String, names: Vec<String> },
    Raised(House),
}

#[derive(Deserialize)]
pub struct House {
    faces: Vec<Plane>,
    totals: BTreeMap<String, f64>,
    tolerance: Tolerance,
    #[serde(default)]
    strips: bool,
}

/// The faces of one plane, compared as a sum.
#[derive(Deserialize)]
struct Plane {
    body: String,
    legs: Vec<usize>,
    band: usize,
    plan_area: f64,
    area: f64,
}

#[derive(Clone, Copy, Deserialize)]
struct Tolerance {
    area: f64,
    edge: f64,
}

/// Largest differences: of one face in sq ft, of one kind of edge in feet.
#[derive(Clone, Copy, Debug, Default)]
pub struct Differences {
    pub area: f64,
    pub edge: f64,
}

impl Differences {
    pub fn max(self, other: Differences) -> Differences {
        Differences {
            area: self.area.max(other.area),
            edge: self.edge.max(other.edge),
        }
    }
}

fn within(what: &str, ours: f64, theirs: f64, tolerance: f64) -> Result<f64, String> {
    let off = (ours - theirs).abs();
    if off <= tolerance + SHARE * theirs.abs() {
        Ok(off)
    } else {
        Err(format!("{what} is {ours:.4}, expected {theirs:.4}"))
    }
}

/// Whether a refusal came and its sentence names what it should.
pub fn refused(
    told: &Result<Roof, RaiseError>,
    refusal: &str,
    names: &[String],
) -> Result<Differences, String> {
    let Err(told) = told else {
        return Err(format!("raised, expected the refusal {refusal}"));
    };
    let text = told.to_string();
    for name in names {
        // The path in the file is the reader's to add; the kernel names body and leg.
        if refusal != "edges_count" && refusal != "bands" && refusal != "pitch" {
            if !name.split('|').any(|one| text.contains(one)) {
                return Err(format!("\"{text}\" does not name {name}"));
            }
        } else if !text.contains("main") {
            return Err(format!("\"{text}\" does not name its body"));
        }
    }
    Ok(Differences::default())
}

impl House {
    pub fn compare(&self, bodies: &[BodyShape], roof: &Roof) -> Result<Differences, String> {
        let mut worst = self.compare_faces(bodies, roof)?;
        let total = |key: &str| self.totals.get(key).copied().unwrap_or(0.0);
        let twice = 2.0 * self.tolerance.area;
        let [plan_area, area] = [roof.plan_area(), roof.area()].map(Area::in_square_feet);
        within("plan area", plan_area, total("plan_area"), twice)?;
        within("area", area, total("area"), twice)?;
        let length_of = |kind| roof.length_of(kind).in_feet();
        let mut kinds: Vec<(&str, f64, f64)> = EdgeKind::ALL
            .iter()
            .map(|&kind| (kind.key(), length_of(kind), total(kind.key())))
            .collect();
        if self.strips {
            kinds.retain(|(key, ..)| *key != "hip" && *key != "valley");
            kinds.push((
                "hip less valley",
                length_of(EdgeKind::Hip) - length_of(EdgeKind::Valley),
                total("hip") - total("valley"),
            ));
        }
        for (key, ours, theirs) in kinds {
            worst.edge = worst
                .edge
                .max(within(key, ours, theirs, self.tolerance.edge)?);
        }
        Ok(worst)
    }

    fn compare_faces(&self, bodies: &[BodyShape], roof: &Roof) -> Result<Differences, String> {
        let mut worst = Differences::default();
        let mut matched = vec![false; roof.faces.len()];
        for plane in &self.faces {
            let (mut plan_area, mut area) = (0.0, 0.0);
            for (place, face) in roof.faces.iter().enumerate() {
                if bodies[face.body].id == plane.body
                    && plane.legs.contains(&face.leg)
                    && face.band.unwrap_or(0) == plane.band
                {
                    matched[place] = true;
                    plan_area += face.plan_area.in_square_feet();
                    area += face.area.in_square_feet();
                }
            }
            let name = format!("{} legs {:?} band {}", plane.body, plane.legs, plane.band);
            let tolerance = self.tolerance.area;
            within(
                &format!("plan area of {name}"),
                plan_area,
                plane.plan_area,
                tolerance,
            )?;
            let off = within(&format!("area of {name}"), area, plane.area, tolerance)?;
            worst.area = worst.area.max(off);
        }
        for (face, matched) in roof.faces.iter().zip(matched) {
            let area = face.area.in_square_feet();
            if !matched && area > self.tolerance.area {
                return Err(format!("a face too many: leg {} of {area:.3}", face.leg));
            }
        }
        Ok(worst)
    }
}

use crate::Noise;
use crate::walk::{Walk, feet};
use eavebook_core::survey::{
    Body, LegEdge, PitchReading, Point, Reading, Rise, Sketch, Span, Survey, Way,
};
use eavebook_core::units::{Angle, Length, Pitch};

/// One body under description: readings exact and single, every leg without a slope.
#[derive(Clone, Debug)]
pub struct House {
    walk: Walk,
    corners: Vec<Point>,
    body: Body,
}

/// Begins the description of a house with the walk round its outline.
///
/// # Panics
/// A walk that cannot be read or does not come round is a mistake of the test.
#[must_use]
pub fn house(walk: &str) -> House {
    let walk = Walk::read(walk);
    let corners = walk.corners();
    let legs = corners.len();
    let edge = LegEdge {
        rise: Rise::Unknown,
        overhang: None,
    };
    let mut house = House {
        body: Body {
            id: "main".into(),
            eave_height: Length::feet(9.0),
            outline: Sketch::Turned {
                start: Point { x: 0.0, y: 0.0 },
                heading: Angle::degrees(0.0),
                turns: walk.turns.clone(),
                turn_sigma: Angle::degrees(0.21),
            },
            readings: Vec::new(),
            edges: vec![edge; legs],
            placed_from: None,
        },
        walk,
        corners,
    };
    for leg in 0..legs {
        house = house.read(Span::Leg(leg));
    }
    house
}

impl House {
    /// Its name; `main` until told.
    #[must_use]
    pub fn named(mut self, id: &str) -> House {
        self.body.id = id.into();
        self
    }

    /// One slope for every leg that is no end, rise in 12.
    #[must_use]
    pub fn pitch(mut self, rise_in_12: f64) -> House {
        for edge in &mut self.body.edges {
            if !matches!(edge.rise, Rise::Gable | Rise::Wall) {
                edge.rise = Rise::Pitch(Pitch::rise_in_12(rise_in_12));
            }
        }
        self
    }

    /// The slope of one leg.
    #[must_use]
    pub fn pitch_of(self, leg: usize, rise_in_12: f64) -> House {
        self.rises(leg, Rise::Pitch(Pitch::rise_in_12(rise_in_12)))
    }

    /// A leg whose slope was read with a phone: degrees forward and, after it, reversed.
    #[must_use]
    pub fn phone(self, leg: usize, both_ways: &[[f64; 2]]) -> House {
        let readings = both_ways
            .iter()
            .flat_map(|[forward, reversed]| [(forward, Way::Forward), (reversed, Way::Reversed)])
            .map(|(degrees, way)| PitchReading::new(Angle::degrees(*degrees), way))
            .collect();
        self.rises(leg, Rise::PitchReadings(readings))
    }

    /// A leg whose slope was looked at once, one way.
    #[must_use]
    pub fn one_look(self, leg: usize, degrees: f64) -> House {
        let angle = Angle::degrees(degrees);
        let way = Way::Forward;
        self.rises(
            leg,
            Rise::PitchReadings(vec![PitchReading::new(angle, way)]),
        )
    }

    /// What rises at one leg.
    #[must_use]
    pub fn rises(mut self, leg: usize, rise: Rise) -> House {
        self.body.edges[leg].rise = rise;
        self
    }

    /// A vertical end over a leg.
    #[must_use]
    pub fn gable(self, leg: usize) -> House {
        self.rises(leg, Rise::Gable)
    }

    /// A wall that rises past the roof at a leg.
    #[must_use]
    pub fn wall(self, leg: usize) -> House {
        self.rises(leg, Rise::Wall)
    }

    /// The same overhang at every leg.
    #[must_use]
    pub fn overhang(mut self, overhang: f64) -> House {
        for edge in &mut self.body.edges {
            edge.overhang = Some(Length::feet(overhang));
        }
        self
    }

    /// Height of the eaves.
    #[must_use]
    pub fn eaves_at(mut self, height: f64) -> House {
        self.body.eave_height = Length::feet(height);
        self
    }

    /// Where corner 0 lies and where leg 0 leads.
    #[must_use]
    pub fn standing(mut self, x: f64, y: f64, heading: f64) -> House {
        if let Sketch::Turned {
            start, heading: h, ..
        } = &mut self.body.outline
        {
            *start = Point { x, y };
            *h = Angle::degrees(heading);
        }
        self
    }

    /// Corners known from elsewhere, and no readings.
    #[must_use]
    pub fn known(mut self) -> House {
        self.body.outline = Sketch::Known(self.corners.clone());
        self.body.readings.clear();
        self
    }

    /// One more exact reading of anything.
    #[must_use]
    pub fn read(mut self, span: Span) -> House {
        let value = Length::feet(self.true_value(span));
        self.body.readings.push(Reading {
            id: String::new(),
            span,
            value,
            text: None,
            sigma: None,
        });
        self.name_readings()
    }

    /// Every leg read so often.
    #[must_use]
    pub fn read_each(mut self, times: usize) -> House {
        let once = self.legs_read();
        for _ in 1..times {
            for leg in &once {
                self = self.read(Span::Leg(*leg));
            }
        }
        self
    }

    /// A leg read once more.
    #[must_use]
    pub fn again(self, leg: usize) -> House {
        self.read(Span::Leg(leg))
    }

    /// A check length between two corners.
    #[must_use]
    pub fn tie(self, from: usize, to: usize) -> House {
        self.read(Span::Tie(from, to))
    }

    /// A span between two corners along the direction of a leg.
    #[must_use]
    pub fn overall(self, from: usize, to: usize, along_leg: usize) -> House {
        self.read(Span::Overall {
            from,
            to,
            along_leg,
        })
    }

    /// A leg that nobody could reach.
    #[must_use]
    pub fn unread(mut self, leg: usize) -> House {
        self.body
            .readings
            .retain(|reading| reading.span != Span::Leg(leg));
        self.name_readings()
    }

    /// The last reading of a leg says something else.
    #[must_use]
    pub fn misread(mut self, leg: usize, tape: &str) -> House {
        let value = Length::feet(feet(tape));
        if let Some(last) = self
            .body
            .readings
            .iter_mut()
            .rfind(|reading| reading.span == Span::Leg(leg))
        {
            last.value = value;
            last.text = Some(tape.into());
        }
        self
    }

    /// Every reading off by a little, booked to a tenth of a foot.
    #[must_use]
    pub fn noisy(mut self, noise: &mut Noise, sigma: f64) -> House {
        for reading in &mut self.body.readings {
            let off = reading.value.in_feet() + noise.normal(sigma);
            reading.value = Length::feet((off * 10.0).round() / 10.0);
        }
        self
    }

    /// Another body beside this one.
    #[must_use]
    pub fn and(self, other: House) -> Bodies {
        Bodies(vec![self.body]).and(other)
    }

    /// The body alone.
    #[must_use]
    pub fn body(&self) -> Body {
        self.body.clone()
    }

    /// Where the corners are in truth, corner 0 at (0, 0), leg 0 along the first axis.
    #[must_use]
    pub fn true_corners(&self) -> &[Point] {
        &self.corners
    }

    /// The survey of this one body.
    #[must_use]
    pub fn survey(&self) -> Survey {
        Bodies(vec![self.body.clone()]).survey()
    }

    fn legs_read(&self) -> Vec<usize> {
        let mut legs: Vec<usize> = self
            .body
            .readings
            .iter()
            .filter_map(|reading| match reading.span {
                Span::Leg(leg) => Some(leg),
                Span::Tie(..) | Span::Overall { .. } | Span::WallOfLeg { .. } => None,
            })
            .collect();
        legs.sort_unstable();
        legs.dedup();
        legs
    }

    fn true_value(&self, span: Span) -> f64 {
        let n = self.corners.len();
        let from_to = |a: usize, b: usize| {
            let (a, b) = (self.corners[a % n], self.corners[b % n]);
            (b.x - a.x, b.y - a.y)
        };
        match span {
            Span::Leg(leg) => self.walk.lengths[leg],
            Span::Tie(from, to) => {
                let (x, y) = from_to(from, to);
                x.hypot(y)
            }
            Span::Overall {
                from,
                to,
                along_leg,
            } => {
                let (x, y) = from_to(from, to);
                let (ux, uy) = from_to(along_leg, along_leg + 1);
                ((x * ux + y * uy) / ux.hypot(uy)).abs()
            }
            Span::WallOfLeg { leg, overhangs } => {
                self.walk.lengths[leg] - overhangs[0].in_feet() - overhangs[1].in_feet()
            }
        }
    }

    /// Readings are named in order: `t1`, `t2` and so on.
    fn name_readings(mut self) -> House {
        for (place, reading) in self.body.readings.iter_mut().enumerate() {
            reading.id = format!("t{}", place + 1);
        }
        self
    }
}

/// Several bodies.
#[derive(Clone, Debug)]
pub struct Bodies(Vec<Body>);

impl Bodies {
    /// One more body; its readings take its name before their own.
    #[must_use]
    pub fn and(mut self, other: House) -> Bodies {
        let mut body = other.body;
        for reading in &mut body.readings {
            reading.id = format!("{} {}", body.id, reading.id);
        }
        self.0.push(body);
        self
    }

    /// The survey of these bodies.
    #[must_use]
    pub fn survey(&self) -> Survey {
        Survey {
            bodies: self.0.clone(),
            ..Survey::default()
        }
    }
}

//! The text of a walk to legs and turns.

use eavebook_core::survey::Point;
use eavebook_core::units::{Angle, Tape};

/// Lengths and turns of an outline.
#[derive(Clone, Debug)]
pub struct Walk {
    /// What the text gives for each leg, feet.
    pub lengths: Vec<f64>,
    /// Turn at the far end of each leg; left positive.
    pub turns: Vec<Angle>,
}

impl Walk {
    /// Reads a walk.
    ///
    /// # Panics
    /// A walk that cannot be read, or turns that do not come round, are a mistake of the test.
    pub fn read(text: &str) -> Walk {
        let (mut lengths, mut turns) = (Vec::new(), Vec::new());
        let mut tape = String::new();
        let mut words = text.split_whitespace().peekable();
        while let Some(word) = words.next() {
            let side = match word {
                "out" => 1.0,
                "in" => -1.0,
                "straight" => 0.0,
                _ => {
                    tape.push_str(word);
                    tape.push(' ');
                    continue;
                }
            };
            let degrees = words.peek().and_then(|next| next.parse::<f64>().ok());
            if degrees.is_some() {
                words.next();
            }
            turns.push(Angle::degrees(side * degrees.unwrap_or(90.0)));
            lengths.push(feet(&tape));
            tape.clear();
        }
        assert!(tape.is_empty(), "after {tape}a corner is missing");
        let sum: f64 = turns.iter().map(|turn| turn.in_degrees()).sum();
        assert!(
            (sum.abs() - 360.0).abs() < 1e-6,
            "the turns of \"{text}\" come to {sum} degrees, not to 360"
        );
        Walk { lengths, turns }
    }

    /// Corners of the walk from (0, 0), its first leg along the first axis.
    ///
    /// # Panics
    /// A walk that ends more than 0.1 ft from its start is a mistake of the test.
    pub fn corners(&self) -> Vec<Point> {
        let mut at = Point { x: 0.0, y: 0.0 };
        let mut heading = 0.0_f64;
        let mut corners = Vec::new();
        for (length, turn) in self.lengths.iter().zip(&self.turns) {
            corners.push(at);
            at.x += length * heading.cos();
            at.y += length * heading.sin();
            heading += turn.in_radians();
        }
        let gap = at.x.hypot(at.y);
        assert!(gap < 0.1, "the walk ends {gap:.2} ft from its start");
        corners
    }
}

/// Tape text as feet.
pub fn feet(text: &str) -> f64 {
    match Tape::read(text.trim()) {
        Ok(tape) => tape.length().in_feet(),
        Err(refusal) => {
            assert!(text.is_empty(), "{refusal}");
            0.0
        }
    }
}

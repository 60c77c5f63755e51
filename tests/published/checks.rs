use serde::Deserialize;
use serde_json::Value;

/// One published figure.
#[derive(Debug, Deserialize)]
pub struct Check {
    pub id: String,
    pub kind: String,
    pub quantity: String,
    pub inputs: Value,
    pub expected: Value,
    pub unit: String,
    pub tolerance: f64,
    pub source: String,
    pub note: Option<String>,
}

impl Check {
    /// A number among the inputs.
    pub fn input(&self, name: &str) -> f64 {
        let number = self.inputs[name].as_f64();
        number.unwrap_or_else(|| panic!("{} has no number {name}", self.id))
    }
}

pub fn all() -> Vec<Check> {
    serde_json::from_str(include_str!("checks.json")).unwrap()
}

pub fn find(id: &str) -> Check {
    let found = all().into_iter().find(|check| check.id == id);
    found.unwrap_or_else(|| panic!("no check is called {id}"))
}

/// What the kernel makes of the inputs is the figure expected, within its tolerance.
pub fn holds(id: &str, kernel: impl Fn(&Check) -> f64) {
    /// Rounding of doubles, where a figure is exact.
    const ROUND_OFF: f64 = 1e-9;
    let check = find(id);
    let (found, expected) = (kernel(&check), check.expected.as_f64().unwrap());
    assert!(
        (found - expected).abs() <= check.tolerance + ROUND_OFF,
        "{id}, {} ({}): the kernel gives {found} {}, {} says {expected} {}",
        check.quantity,
        check.kind,
        check.unit,
        check.source,
        check.note.unwrap_or_default(),
    );
}

//! Counts and money exactly, other numbers to 2e-4, relative above 1.

use serde_json::Value;

const NEAR: f64 = 2e-4;

/// Where what was told differs from what was expected; more may be told than is expected.
pub fn differences(path: &str, expected: &Value, told: &Value) -> Vec<String> {
    if path == "/takeoff/cautions" {
        return Vec::new();
    }
    match (expected, told) {
        (Value::Object(expected), Value::Object(told)) => expected
            .iter()
            .flat_map(|(key, value)| {
                let path = format!("{path}/{key}");
                match told.get(key) {
                    Some(told) => differences(&path, value, told),
                    None => vec![format!("{path} is not told")],
                }
            })
            .collect(),
        (Value::Array(expected), Value::Array(told)) if expected.len() == told.len() => expected
            .iter()
            .zip(told)
            .enumerate()
            .flat_map(|(place, (expected, told))| {
                differences(&format!("{path}/{place}"), expected, told)
            })
            .collect(),
        (Value::Number(number), Value::Number(found)) => {
            let exact = number.is_i64() || number.is_u64();
            let [number, found] = [number, found].map(|it| it.as_f64().unwrap_or(f64::NAN));
            let near = if exact {
                0.0
            } else {
                NEAR * number.abs().max(1.0)
            };
            if (number - found).abs() <= near {
                Vec::new()
            } else {
                vec![format!("{path}: {number} expected, {found} told")]
            }
        }
        (expected, told) if expected == told => Vec::new(),
        (expected, told) => vec![format!("{path}: {expected} expected, {told} told")],
    }
}

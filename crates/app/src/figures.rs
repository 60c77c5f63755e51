//! Figures of a takeoff in words.

/// A number with its thousands grouped and no trailing zeros: `1,606`, `29.6`.
#[must_use]
pub fn number(value: f64, decimals: usize) -> String {
    let text = format!("{:.decimals$}", value.abs());
    let (whole, part) = text.split_once('.').unwrap_or((&text, ""));
    let part = part.trim_end_matches('0');
    let mut grouped = String::new();
    for (place, digit) in whole.chars().enumerate() {
        if place > 0 && (whole.len() - place).is_multiple_of(3) {
            grouped.push(',');
        }
        grouped.push(digit);
    }
    let is_zero = whole == "0" && part.is_empty();
    let sign = if value < 0.0 && !is_zero { "-" } else { "" };
    match part {
        "" => format!("{sign}{grouped}"),
        part => format!("{sign}{grouped}.{part}"),
    }
}

/// A count with its word: `1 pack`, `2 boxes`, `3 sq ft`.
#[must_use]
pub fn counted(value: f64, decimals: usize, word: &str) -> String {
    let said = number(value, decimals);
    if said == "1" || matches!(word, "ft" | "sq ft" | "lb" | "sq in" | "in") {
        return format!("{said} {word}");
    }
    match word {
        "box" => format!("{said} boxes"),
        word => format!("{said} {word}s"),
    }
}

/// A whole count with its word.
#[must_use]
pub fn whole(count: u64, word: &str) -> String {
    // Counts of goods are far below what a float holds exactly.
    #[expect(
        clippy::cast_precision_loss,
        reason = "counts of goods, far below 2^53"
    )]
    counted(count as f64, 0, word)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn figures_are_grouped_and_end_without_zeros() {
        assert_eq!(number(1_606.0, 1), "1,606");
        assert_eq!(number(29.64, 1), "29.6");
        assert_eq!(number(-0.001, 1), "0");
        assert_eq!(number(1_234_567.5, 1), "1,234,567.5");
        assert_eq!(counted(1.0, 1, "pack"), "1 pack");
        assert_eq!(counted(2.0, 0, "box"), "2 boxes");
        assert_eq!(counted(12.5, 1, "sq ft"), "12.5 sq ft");
        assert_eq!(whole(61, "pack"), "61 packs");
    }
}

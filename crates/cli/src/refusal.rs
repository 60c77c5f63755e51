use std::fmt;

/// Why a command did nothing: one line that names the thing and the remedy.
#[derive(Clone, Debug, PartialEq)]
pub struct Refusal(String);

/// Most signs of a refusal in print.
const LONGEST: usize = 480;

impl Refusal {
    /// One sentence, made fit for one line.
    pub fn new(sentence: &str) -> Refusal {
        Refusal(one_line(sentence))
    }
}

impl fmt::Display for Refusal {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.0)
    }
}

/// A text in one line: control characters escaped, the middle left out of what is too long.
pub fn one_line(text: &str) -> String {
    let mut signs: Vec<char> = Vec::new();
    for sign in text.chars() {
        if sign.is_control() || matches!(sign, '\u{2028}' | '\u{2029}') {
            signs.extend(sign.escape_default());
        } else {
            signs.push(sign);
        }
    }
    if signs.len() > LONGEST {
        // The remedy stands at the end.
        const TAIL: usize = 200;
        let tail = signs.split_off(signs.len() - TAIL);
        signs.truncate(LONGEST - TAIL - 1);
        signs.push('…');
        signs.extend(tail);
    }
    signs.into_iter().collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_refusal_is_one_line_whatever_it_quotes() {
        let text = Refusal::new("no file \"a\nb\u{7}\": say another").to_string();
        assert_eq!(text, "no file \"a\\nb\\u{7}\": say another");
    }

    #[test]
    fn a_long_refusal_keeps_its_remedy() {
        let text = Refusal::new(&format!("no file {}: say another", "x".repeat(9000))).to_string();
        assert_eq!(text.chars().count(), LONGEST);
        assert!(text.ends_with(": say another"));
    }
}

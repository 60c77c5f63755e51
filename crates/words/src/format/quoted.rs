/// A person's own text, or text out of a file: an address, a name, a note. It is never translated.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Quoted(pub String);

impl Quoted {
    /// The longest text that is shown of it, in characters.
    const LONGEST: usize = 60;

    /// The text on one line: shortened, control and direction characters escaped.
    #[must_use]
    pub fn line(&self) -> String {
        let mut line = String::new();
        for (place, sign) in self.0.chars().enumerate() {
            if place == Self::LONGEST {
                line.push('…');
                break;
            }
            if sign.is_control() || changes_direction_or_hides(sign) {
                line.extend(sign.escape_default());
            } else {
                line.push(sign);
            }
        }
        line
    }
}

impl From<&str> for Quoted {
    fn from(text: &str) -> Quoted {
        Quoted(text.to_owned())
    }
}

impl From<String> for Quoted {
    fn from(text: String) -> Quoted {
        Quoted(text)
    }
}

/// Unicode line separators, bidirectional controls and zero-width characters.
const fn changes_direction_or_hides(sign: char) -> bool {
    matches!(
        sign,
        '\u{200b}'..='\u{200f}'
            | '\u{2028}'..='\u{202e}'
            | '\u{2060}'..='\u{206f}'
            | '\u{61c}'
            | '\u{feff}'
    )
}

//! The fonts, compiled in, and which signs they have.

use serde_json::Value;
use std::collections::BTreeSet;
use typst::foundations::Bytes;
use typst::text::{Font, FontBook};

/// The fonts of the papers, in the order in which a sign is looked for.
const FONTS: [&[u8]; 5] = [
    include_bytes!("../../../../assets/fonts/AtkinsonHyperlegibleNext-Regular.ttf"),
    include_bytes!("../../../../assets/fonts/AtkinsonHyperlegibleNext-Bold.ttf"),
    include_bytes!("../../../../assets/fonts/AtkinsonHyperlegibleMono-Regular.ttf"),
    include_bytes!("../../../../assets/fonts/AtkinsonHyperlegibleMono-Bold.ttf"),
    include_bytes!("../../../../assets/fonts/DejaVuSans.ttf"),
];

/// What stands for a sign that no font has.
const NO_SIGN: &str = "[?]";

/// The fonts of the papers.
#[derive(Clone)]
pub struct Letters {
    pub(super) fonts: Vec<Font>,
    pub(super) book: FontBook,
}

/// Signs that no font has.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Unwritten {
    /// The first few.
    pub signs: Vec<char>,
    /// The first text that holds one, as it was typed.
    pub text: String,
}

impl Letters {
    /// Those that come with the program.
    pub fn shipped() -> Letters {
        Letters::from_fonts(&FONTS)
    }

    /// Those that can be read of these.
    pub fn from_fonts(fonts: &[&'static [u8]]) -> Letters {
        let fonts: Vec<Font> = fonts
            .iter()
            .flat_map(|bytes| Font::iter(Bytes::new(*bytes)))
            .collect();
        Letters {
            book: FontBook::from_fonts(&fonts),
            fonts,
        }
    }

    /// Whether every font is there.
    pub fn are_all_there(&self) -> bool {
        self.fonts.len() == FONTS.len()
    }

    fn has(&self, sign: char) -> bool {
        self.fonts
            .iter()
            .any(|font| font.info().coverage.contains(u32::from(sign)))
    }

    /// Puts `[?]` for each sign that no font has, and a space for each that is none, in all texts
    /// of a leaf: one such sign would cost the whole paper.
    pub fn make_writable(&self, leaf: &mut Value) -> Option<Unwritten> {
        let mut signs = BTreeSet::new();
        let mut first = None;
        self.walk(leaf, &mut |text, sign| {
            signs.insert(sign);
            first.get_or_insert_with(|| text.to_owned());
        });
        first.map(|text| Unwritten {
            signs: signs.into_iter().take(8).collect(),
            text,
        })
    }

    fn walk(&self, value: &mut Value, lacks: &mut dyn FnMut(&str, char)) {
        match value {
            Value::String(text) => {
                let writable = |sign: char| {
                    sign == '\n' || (!sign.is_control() && !is_invisible(sign) && self.has(sign))
                };
                if text.chars().all(writable) {
                    return;
                }
                let typed = std::mem::take(text);
                for sign in typed.chars() {
                    if writable(sign) {
                        text.push(sign);
                    } else if sign.is_control() || is_invisible(sign) {
                        text.push(' ');
                    } else {
                        lacks(&typed, sign);
                        text.push_str(NO_SIGN);
                    }
                }
            }
            Value::Array(values) => values.iter_mut().for_each(|value| self.walk(value, lacks)),
            Value::Object(fields) => fields
                .values_mut()
                .for_each(|value| self.walk(value, lacks)),
            Value::Null | Value::Bool(_) | Value::Number(_) => {}
        }
    }
}

/// Signs that only steer others: joiners, variation selectors, directions.
fn is_invisible(sign: char) -> bool {
    matches!(sign, '\u{200b}'..='\u{200f}' | '\u{202a}'..='\u{202e}' | '\u{2060}'..='\u{206f}' | '\u{fe00}'..='\u{fe0f}' | '\u{feff}')
}

#[cfg(test)]
mod tests {
    use super::*;
    use serde_json::json;

    #[test]
    fn the_signs_of_the_trade_are_all_there() {
        let letters = Letters::shipped();
        assert!(letters.are_all_there());
        for sign in "aZ09ñáÉ¿¡±′″⅛¼½⅜→✓○◐Σσ°²–ЖЪ".chars() {
            assert!(letters.has(sign), "{sign}");
        }
    }

    #[test]
    fn a_sign_that_no_font_has_becomes_a_question_and_is_named_once() {
        let mut leaf = json!({ "a": ["屋 Lane", "plain"], "b": { "c": "bell\u{7}\u{200d}" } });
        let unwritten = Letters::shipped().make_writable(&mut leaf);
        assert_eq!(
            leaf,
            json!({ "a": ["[?] Lane", "plain"], "b": { "c": "bell  " } })
        );
        let unwritten = unwritten.unwrap();
        assert_eq!(
            (unwritten.signs, unwritten.text.as_str()),
            (vec!['屋'], "屋 Lane")
        );
    }
}

//! Pairing codes: signs that can be read aloud and typed with gloves on.
//!
//! The first four signs say which code it is, so that wrong tries are counted against that one
//! alone. Six more are secret in a code to type, twenty-six in a link. Digits and letters are those
//! of Crockford's base 32.

use crate::error::HubError;

const SIGNS: &[u8; 32] = b"0123456789ABCDEFGHJKMNPQRSTVWXYZ";
const NAME: usize = 4;
const TYPED: usize = 10;
const LINK: usize = 30;

/// A code as it was given, all readings of one sign made one.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(crate) struct Code(String);

/// Which of the two it is, by its length.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Way {
    /// Ten signs.
    Typed,
    /// In a link or its picture.
    Link,
}

impl Code {
    /// What a person typed: any case, O is 0, I and L are 1, gaps and hyphens do not count.
    pub(crate) fn read(text: &str) -> Option<(Code, Way)> {
        let mut signs = String::new();
        for sign in text.chars().filter(|sign| !" -".contains(*sign)) {
            let sign = match sign.to_ascii_uppercase() {
                'O' => '0',
                'I' | 'L' => '1',
                sign => sign,
            };
            if signs.len() >= LINK || !sign.is_ascii() || !SIGNS.contains(&(sign as u8)) {
                return None;
            }
            signs.push(sign);
        }
        match signs.len() {
            TYPED => Some((Code(signs), Way::Typed)),
            LINK => Some((Code(signs), Way::Link)),
            _ => None,
        }
    }

    /// A fresh pair with one name.
    ///
    /// # Errors
    /// `System` where the machine gives no randomness.
    pub(crate) fn draw() -> Result<(Code, Code), HubError> {
        let name = signs::<NAME>()?;
        let typed = signs::<{ TYPED - NAME }>()?;
        let link = signs::<{ LINK - NAME }>()?;
        Ok((
            Code(format!("{name}{typed}")),
            Code(format!("{name}{link}")),
        ))
    }

    /// The part that is no secret.
    pub(crate) fn name(&self) -> &str {
        &self.0[..NAME]
    }

    pub(crate) fn text(&self) -> &str {
        &self.0
    }

    pub(crate) fn sha256(&self) -> [u8; 32] {
        crate::token::sha256(self.0.as_bytes())
    }
}

fn signs<const N: usize>() -> Result<String, HubError> {
    let drawn: [u8; N] = crate::token::random()?;
    Ok(drawn
        .iter()
        .map(|byte| SIGNS[usize::from(byte & 31)] as char)
        .collect())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn signs_that_look_alike_are_one() {
        let (clear, way) = Code::read("0110ABCDEF").unwrap();
        assert_eq!(way, Way::Typed);
        for seen in ["OiLoabcdef", "olio-abc def", "0110-abcdef"] {
            let (read, _) = Code::read(seen).unwrap();
            assert_eq!(read.text().len(), clear.text().len(), "{seen}");
        }
        assert_eq!(Code::read("oilOabcdef").unwrap().0, clear);
    }

    #[test]
    fn what_is_no_code_is_none() {
        for bad in ["", "0110ABCDE", "0110ABCDEFG", "0110ABCDEU", "0110ABCDEé"] {
            assert_eq!(Code::read(bad), None, "{bad}");
        }
    }

    #[test]
    fn both_codes_of_a_draw_have_one_name_and_are_read_back() {
        let (typed, link) = Code::draw().unwrap();
        assert_eq!(typed.name(), link.name());
        assert_eq!(Code::read(typed.text()), Some((typed.clone(), Way::Typed)));
        assert_eq!(Code::read(link.text()), Some((link.clone(), Way::Link)));
    }
}

//! JSON (RFC 8259) read once from front to back, each value handed over as it comes: nothing is
//! kept that nobody asked for, a key given twice is seen, and every refusal knows its path.

use super::refusal::{Fault, Refusal, ShapeFault, SyntaxFault};
use crate::path::Path;
use crate::units::quotable;
use std::collections::BTreeSet;

/// Most signs of a key or a text.
pub(super) const LONGEST_TEXT: usize = 200;

/// A kind of value.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Kind {
    Object,
    List,
    Text,
    Number,
    Truth,
    Null,
}

pub(super) struct Reader<'t> {
    text: &'t str,
    at: usize,
    path: Path,
}

impl<'t> Reader<'t> {
    /// A reader at the first value of `bytes`.
    pub(super) fn new(bytes: &'t [u8]) -> Result<Reader<'t>, Refusal> {
        let text = str::from_utf8(bytes).map_err(|fault| {
            let sound = str::from_utf8(bytes.get(..fault.valid_up_to()).unwrap_or_default());
            let (line, column) = line_and_column(sound.unwrap_or_default());
            Refusal::not_json(line, column, Path::default(), SyntaxFault::NotUtf8)
        })?;
        // A byte order mark is no part of the text.
        let text = text.strip_prefix('\u{feff}').unwrap_or(text);
        let mut reader = Reader {
            text,
            at: 0,
            path: Path::default(),
        };
        match reader.next_sign() {
            None => Err(reader.not_json(SyntaxFault::Empty)),
            Some(_) => Ok(reader),
        }
    }

    /// A refusal of what stands at the present path.
    pub(super) fn refuse(&self, fault: impl Into<Fault>) -> Refusal {
        Refusal::at(self.path.clone(), fault)
    }

    /// A refusal of the key just read.
    pub(super) fn unknown_key(&self, key: &str, known: &'static [&'static str]) -> Refusal {
        let key = quotable(key);
        self.refuse(ShapeFault::UnknownKey { key, known })
    }

    /// What a key gave, or a refusal of the object without it.
    pub(super) fn must_have<T>(
        &self,
        given: Option<T>,
        key: &'static str,
        example: &'static str,
    ) -> Result<T, Refusal> {
        given.ok_or_else(|| self.refuse(ShapeFault::KeyMissing { key, example }))
    }

    /// The present path.
    pub(super) fn path(&self) -> &Path {
        &self.path
    }

    fn not_json(&self, fault: SyntaxFault) -> Refusal {
        let before = self.text.get(..self.at).unwrap_or(self.text);
        let (line, column) = line_and_column(before);
        Refusal::not_json(line, column, self.path.clone(), fault)
    }

    /// What kind of value comes next.
    pub(super) fn kind(&mut self) -> Result<Kind, Refusal> {
        match self.next_sign() {
            Some('{') => Ok(Kind::Object),
            Some('[') => Ok(Kind::List),
            Some('"') => Ok(Kind::Text),
            Some('-' | '+' | '.' | '0'..='9') => Ok(Kind::Number),
            Some('/') => Err(self.not_json(SyntaxFault::Comment)),
            Some(sign) if sign.is_alphabetic() => match self.word() {
                "true" | "false" => Ok(Kind::Truth),
                "null" => Ok(Kind::Null),
                word => Err(self.not_json(SyntaxFault::BareWord {
                    word: quotable(word),
                })),
            },
            Some(_) | None => Err(self.unexpected("a value")),
        }
    }

    /// An object: `each` is called after every key and takes its value.
    pub(super) fn object(
        &mut self,
        wanted: &'static str,
        mut each: impl FnMut(&mut Self, &str) -> Result<(), Refusal>,
    ) -> Result<(), Refusal> {
        self.must_be(Kind::Object, wanted)?;
        self.at += 1;
        let mut seen = BTreeSet::new();
        if self.next_sign() == Some('}') {
            self.at += 1;
            return Ok(());
        }
        loop {
            if self.next_sign() != Some('"') {
                return Err(self.unexpected("a key in double quotes"));
            }
            let key = self.string()?;
            if !seen.insert(key.clone()) {
                let key = quotable(&key);
                return Err(self.refuse(ShapeFault::KeyTwice { key }));
            }
            self.sign(':', "a colon")?;
            self.path.enter_key(&key);
            each(self, &key)?;
            self.path.leave();
            if self.closes('}', "a comma or }")? {
                return Ok(());
            }
        }
    }

    /// A list of at most `most` values, each taken by `each`.
    pub(super) fn list<T>(
        &mut self,
        wanted: &'static str,
        most: usize,
        mut each: impl FnMut(&mut Self) -> Result<T, Refusal>,
    ) -> Result<Vec<T>, Refusal> {
        self.must_be(Kind::List, wanted)?;
        self.at += 1;
        let mut values = Vec::new();
        if self.next_sign() == Some(']') {
            self.at += 1;
            return Ok(values);
        }
        loop {
            if values.len() == most {
                return Err(self.refuse(ShapeFault::TooMany { most }));
            }
            self.path.enter_place(values.len());
            values.push(each(self)?);
            self.path.leave();
            if self.closes(']', "a comma or ]")? {
                return Ok(values);
            }
        }
    }

    /// A list of exactly two values, each taken by `each`.
    pub(super) fn pair<T>(
        &mut self,
        wanted: &'static str,
        each: impl FnMut(&mut Self) -> Result<T, Refusal>,
    ) -> Result<[T; 2], Refusal> {
        let values = self.list(wanted, 100, each)?;
        let found = values.len();
        values
            .try_into()
            .map_err(|_| self.refuse(ShapeFault::Count { found, wanted: 2 }))
    }

    /// A number.
    pub(super) fn number(&mut self, wanted: &'static str) -> Result<f64, Refusal> {
        let digits = self.digits(wanted)?;
        match digits.parse::<f64>() {
            Ok(number) if number.is_finite() => Ok(number),
            Ok(_) | Err(_) => {
                let number = quotable(digits);
                Err(self.refuse(ShapeFault::TooGreat { number }))
            }
        }
    }

    /// A number as it is written.
    pub(super) fn digits(&mut self, wanted: &'static str) -> Result<&'t str, Refusal> {
        self.must_be(Kind::Number, wanted)?;
        let rest = self.rest();
        let length = rest
            .find(|sign: char| !(sign.is_ascii_alphanumeric() || matches!(sign, '+' | '-' | '.')))
            .unwrap_or(rest.len());
        let written = rest.get(..length).unwrap_or_default();
        if !is_number(written) {
            let number = quotable(written);
            return Err(self.not_json(SyntaxFault::NoNumber { number }));
        }
        self.at += length;
        Ok(written)
    }

    /// A text.
    pub(super) fn text(&mut self, wanted: &'static str) -> Result<String, Refusal> {
        self.must_be(Kind::Text, wanted)?;
        self.string()
    }

    /// `true` or `false`.
    pub(super) fn truth(&mut self, wanted: &'static str) -> Result<bool, Refusal> {
        self.must_be(Kind::Truth, wanted)?;
        let word = self.word();
        self.at += word.len();
        Ok(word == "true")
    }

    /// `null`.
    pub(super) fn null(&mut self) -> Result<(), Refusal> {
        self.must_be(Kind::Null, "null")?;
        self.at += self.word().len();
        Ok(())
    }

    /// Nothing but blanks is left.
    pub(super) fn end(&mut self) -> Result<(), Refusal> {
        match self.next_sign() {
            None => Ok(()),
            Some(_) => Err(self.not_json(SyntaxFault::Follows)),
        }
    }

    fn must_be(&mut self, kind: Kind, wanted: &'static str) -> Result<(), Refusal> {
        let found = self.kind()?;
        if found == kind {
            return Ok(());
        }
        let found = match found {
            Kind::Object => "an object".to_owned(),
            Kind::List => "a list".to_owned(),
            Kind::Text => format!("the text \"{}\"", quotable(&self.string()?)),
            Kind::Number => format!("the number {}", quotable(self.digits("a number")?)),
            Kind::Truth | Kind::Null => self.word().to_owned(),
        };
        Err(self.refuse(ShapeFault::Wrong { found, wanted }))
    }

    /// After a value: takes a comma, or the closing bracket and says so.
    fn closes(&mut self, bracket: char, wanted: &'static str) -> Result<bool, Refusal> {
        match self.next_sign() {
            Some(sign) if sign == bracket => {
                self.at += 1;
                Ok(true)
            }
            Some(',') => {
                self.at += 1;
                if self.next_sign() == Some(bracket) {
                    return Err(self.not_json(SyntaxFault::TrailingComma));
                }
                Ok(false)
            }
            Some(_) | None => Err(self.unexpected(wanted)),
        }
    }

    fn sign(&mut self, sign: char, wanted: &'static str) -> Result<(), Refusal> {
        if self.next_sign() != Some(sign) {
            return Err(self.unexpected(wanted));
        }
        self.at += sign.len_utf8();
        Ok(())
    }

    fn unexpected(&mut self, wanted: &'static str) -> Refusal {
        match self.next_sign() {
            None => self.not_json(SyntaxFault::Ends),
            Some('/') => self.not_json(SyntaxFault::Comment),
            Some(sign) => {
                let found = format!("\"{}\"", quotable(&sign.to_string()));
                self.not_json(SyntaxFault::Unexpected { found, wanted })
            }
        }
    }

    /// The sign after all blanks, which stays to be read.
    fn next_sign(&mut self) -> Option<char> {
        let bytes = self.text.as_bytes();
        while let Some(b' ' | b'\t' | b'\n' | b'\r') = bytes.get(self.at) {
            self.at += 1;
        }
        self.rest().chars().next()
    }

    fn rest(&self) -> &'t str {
        self.text.get(self.at..).unwrap_or_default()
    }

    fn word(&self) -> &'t str {
        let rest = self.rest();
        let length = rest
            .find(|sign: char| !sign.is_alphanumeric())
            .unwrap_or(rest.len());
        rest.get(..length).unwrap_or_default()
    }

    /// A text from its opening quote, escapes undone.
    fn string(&mut self) -> Result<String, Refusal> {
        self.at += 1;
        let mut text = String::new();
        let mut signs = 0;
        loop {
            let Some(sign) = self.rest().chars().next() else {
                return Err(self.not_json(SyntaxFault::Ends));
            };
            match sign {
                '"' => {
                    self.at += 1;
                    return Ok(text);
                }
                '\\' => text.push(self.escape()?),
                '\0'..='\u{1f}' => return Err(self.not_json(SyntaxFault::BareControl)),
                sign => {
                    self.at += sign.len_utf8();
                    text.push(sign);
                }
            }
            signs += 1;
            if signs > LONGEST_TEXT {
                let longest = LONGEST_TEXT;
                return Err(self.refuse(ShapeFault::TooLong { longest }));
            }
        }
    }

    fn escape(&mut self) -> Result<char, Refusal> {
        let bad = |reader: &Self| reader.not_json(SyntaxFault::BadEscape);
        let sign = match self.rest().as_bytes().get(1) {
            Some(b'"') => '"',
            Some(b'\\') => '\\',
            Some(b'/') => '/',
            Some(b'b') => '\u{8}',
            Some(b'f') => '\u{c}',
            Some(b'n') => '\n',
            Some(b'r') => '\r',
            Some(b't') => '\t',
            Some(b'u') => {
                let first = self.unit(0).ok_or_else(|| bad(self))?;
                let second = self.unit(6).filter(|_| (0xd800..0xdc00).contains(&first));
                let units = [first, second.unwrap_or(0)];
                let taken = 1 + usize::from(second.is_some());
                let sign = char::decode_utf16(units.into_iter().take(taken)).next();
                let sign = sign.and_then(Result::ok).ok_or_else(|| bad(self))?;
                self.at += 6 * taken;
                return Ok(sign);
            }
            Some(_) | None => return Err(bad(self)),
        };
        self.at += 2;
        Ok(sign)
    }

    /// The UTF-16 unit of the escape `\uXXXX` that begins so many bytes ahead.
    fn unit(&self, ahead: usize) -> Option<u16> {
        let digits = self.rest().get(ahead..ahead + 6)?.strip_prefix("\\u")?;
        let hex = digits.bytes().all(|digit| digit.is_ascii_hexdigit());
        u16::from_str_radix(digits, 16).ok().filter(|_| hex)
    }
}

/// Line and column, from 1, of the sign after `before`.
fn line_and_column(before: &str) -> (usize, usize) {
    let line = before.bytes().filter(|byte| *byte == b'\n').count() + 1;
    let last = before.rsplit('\n').next().unwrap_or_default();
    (line, last.chars().count() + 1)
}

/// `-? (0 | [1-9][0-9]*) (. [0-9]+)? ([eE] [+-]? [0-9]+)?`
fn is_number(written: &str) -> bool {
    let (mantissa, exponent) = match written.split_once(['e', 'E']) {
        Some((mantissa, exponent)) => (mantissa, Some(exponent)),
        None => (written, None),
    };
    let (whole, decimals) = match mantissa.split_once('.') {
        Some((whole, decimals)) => (whole, Some(decimals)),
        None => (mantissa, None),
    };
    let digits = |part: &str| !part.is_empty() && part.bytes().all(|byte| byte.is_ascii_digit());
    let whole = whole.strip_prefix('-').unwrap_or(whole);
    let exponent = exponent.map(|e| e.strip_prefix(['+', '-']).unwrap_or(e));
    digits(whole)
        && (whole.len() == 1 || !whole.starts_with('0'))
        && decimals.is_none_or(digits)
        && exponent.is_none_or(digits)
}

//! Rates and code profiles in, out, and changed by one key.

use super::fault::{SettingFault, SettingLack};
use super::reader::{At, from_toml};
use super::{Code, Rates, limits};
use crate::path::Path;
use chrono::NaiveDate;
use serde::Deserialize;
use serde_json::{Map, Value};

/// Whether a price may be blank.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Blanks {
    /// Every price must be there, as in a file that is priced at once.
    Refused,
    /// A blank price is kept, as while a firm fills its rates in.
    Kept,
}

impl Rates {
    /// The pretend rates that come with the program: every figure is invented.
    #[must_use]
    pub fn demo() -> Rates {
        let text = include_str!("../../../../assets/rates-demo.toml");
        Rates::from_toml(text, Blanks::Refused).expect("the rates that come with the program")
    }

    /// Rates as a value of a file holds them; `null` or an empty text is a blank price.
    ///
    /// # Errors
    /// The first key that is unknown, missing or out of its range, by its path from `rates`.
    pub fn read(table: &Map<String, Value>, blanks: Blanks) -> Result<Rates, SettingFault> {
        let rates: Rates = table_at("rates", &Value::Object(table.clone()))?;
        limits::figures(&Path::default().key("rates"), &rates.to_value())?;
        limits::rates(&rates)?;
        let blank = rates.prices().into_iter().find(|(_, it)| it.is_none());
        match (blanks, blank) {
            (Blanks::Refused, Some((keys, _))) => {
                let path = keys
                    .iter()
                    .fold(Path::default().key("rates"), |path, key| path.key(key));
                Err(SettingFault::new(path, SettingLack::PriceMissing))
            }
            (Blanks::Refused | Blanks::Kept, _) => Ok(rates),
        }
    }

    /// Rates as TOML.
    ///
    /// # Errors
    /// As [`Rates::read`], and text that is no TOML.
    pub fn from_toml(text: &str, blanks: Blanks) -> Result<Rates, SettingFault> {
        Rates::read(&toml_at("rates", text)?, blanks)
    }

    /// All tables and keys, as [`Rates::read`] takes them.
    #[must_use]
    pub fn to_value(&self) -> Value {
        serde_json::to_value(self).expect("tables of numbers and texts")
    }

    /// The same rates with one key changed.
    ///
    /// `path`: the keys that lead there, `field.price`, `boots.pipe.1.5`, `labour.steepness`.
    /// `text`: as a person writes it: a number, a word, an amount of money, nothing for a blank
    /// price, a list as JSON. A size of boot or a kind of covering that is not listed is added.
    ///
    /// # Errors
    /// As [`Rates::read`]; nothing is changed then.
    pub fn with(&self, path: &str, text: &str) -> Result<Rates, SettingFault> {
        let table = changed("rates", self.to_value(), path, text)?;
        Rates::read(&table, Blanks::Kept)
    }
}

impl Code {
    /// The pretend code profile that comes with the program.
    #[must_use]
    pub fn demo() -> Code {
        let text = include_str!("../../../../assets/code-demo.toml");
        Code::from_toml(text).expect("the code profile that comes with the program")
    }

    /// A code profile as a value of a file holds it.
    ///
    /// # Errors
    /// The first key that is unknown, missing or out of its range, by its path from `code`.
    pub fn read(table: &Map<String, Value>) -> Result<Code, SettingFault> {
        let code: Code = table_at("code", &Value::Object(table.clone()))?;
        limits::figures(&Path::default().key("code"), &code.to_value())?;
        limits::code(&code)?;
        Ok(code)
    }

    /// A code profile as TOML.
    ///
    /// # Errors
    /// As [`Code::read`], and text that is no TOML.
    pub fn from_toml(text: &str) -> Result<Code, SettingFault> {
        Code::read(&toml_at("code", text)?)
    }

    /// All tables and keys, as [`Code::read`] takes them.
    #[must_use]
    pub fn to_value(&self) -> Value {
        serde_json::to_value(self).expect("tables of numbers and texts")
    }

    /// The same code profile with one key changed, as [`Rates::with`].
    ///
    /// # Errors
    /// As [`Code::read`]; nothing is changed then.
    pub fn with(&self, path: &str, text: &str) -> Result<Code, SettingFault> {
        Code::read(&changed("code", self.to_value(), path, text)?)
    }

    /// The day on which it was read.
    #[must_use]
    pub fn day(&self) -> Option<NaiveDate> {
        self.date.parse().ok()
    }
}

fn table_at<'v, T: Deserialize<'v>>(
    name: &'static str,
    value: &'v Value,
) -> Result<T, SettingFault> {
    T::deserialize(At(value)).map_err(|fault| fault.below_key(name))
}

fn toml_at(name: &'static str, text: &str) -> Result<Map<String, Value>, SettingFault> {
    let table = text.parse::<toml::Table>().map_err(|fault| {
        let said = fault.message().replace('\n', " ");
        let lack = SettingLack::Worded(format!("this is no TOML ({said}): mend it there"));
        SettingFault::new(Path::default().key(name), lack)
    })?;
    Ok(from_toml(table))
}

/// The tables with the text at a path of keys.
fn changed(
    name: &'static str,
    tables: Value,
    path: &str,
    text: &str,
) -> Result<Map<String, Value>, SettingFault> {
    let Value::Object(mut tables) = tables else {
        return Ok(Map::new());
    };
    let fault = |path: &Path, lack| Err(SettingFault::new(path.clone(), lack));
    let mut at = Path::default().key(name);
    let mut here = &mut tables;
    let mut rest = path;
    loop {
        // A size of boot has a point of its own: the whole rest is a key where no table is.
        let (key, more) = match rest.split_once('.') {
            Some((key, more)) if here.get(key).is_some_and(Value::is_object) => (key, Some(more)),
            Some(_) | None => (rest, None),
        };
        at = at.key(key);
        let Some(more) = more else {
            // A new row is written like the row for all else.
            let old = here.get(key).or(here.get("other")).cloned();
            here.insert(key.to_owned(), written(old.as_ref(), text));
            return Ok(tables);
        };
        let Some(Value::Object(below)) = here.get_mut(key) else {
            return fault(&at, SettingLack::Missing);
        };
        here = below;
        rest = more;
    }
}

/// What a person wrote, as the kind of value that stood there.
fn written(old: Option<&Value>, text: &str) -> Value {
    let text = text.trim();
    let plain = || Value::String(text.to_owned());
    match old {
        Some(Value::String(_) | Value::Null) | None => plain(),
        Some(Value::Bool(_) | Value::Number(_) | Value::Array(_) | Value::Object(_)) => {
            serde_json::from_str(text).unwrap_or_else(|_| plain())
        }
    }
}

//! Rates and code profile: by the name of a built-in, or whole.

use super::json::{Kind, Reader};
use super::refusal::{Refusal, ShapeFault, TermsFault};
use crate::settings::{Blanks, Chosen, Code, Rates, SettingFault};
use crate::units::quotable;
use serde_json::{Map, Number, Value};

/// Values in rates or a code profile, and how deep they are nested.
const MOST_SETTINGS: usize = 10_000;
const DEEPEST: usize = 16;

pub(super) fn rates(reader: &mut Reader<'_>) -> Result<Chosen<Rates>, Refusal> {
    chosen(reader, Rates::demo, |table| {
        Rates::read(table, Blanks::Refused)
    })
}

pub(super) fn code(reader: &mut Reader<'_>) -> Result<Chosen<Code>, Refusal> {
    chosen(reader, Code::demo, Code::read)
}

fn chosen<T>(
    reader: &mut Reader<'_>,
    demo: impl FnOnce() -> T,
    read: impl FnOnce(&Map<String, Value>) -> Result<T, SettingFault>,
) -> Result<Chosen<T>, Refusal> {
    const WANTED: &str = "\"demo\", or an object with all keys";
    if reader.kind()? == Kind::Text {
        let name = reader.text(WANTED)?;
        return if name == "demo" {
            Ok(Chosen::Demo(demo()))
        } else {
            let name = quotable(&name);
            Err(reader.refuse(TermsFault::NoBuiltIn { name }))
        };
    }
    let mut left = MOST_SETTINGS;
    let table = table(reader, WANTED, DEEPEST, &mut left)?;
    read(&table).map(Chosen::Own).map_err(|fault| {
        let (path, lack) = fault.into_parts();
        Refusal::at(path, TermsFault::Setting(lack))
    })
}

fn table(
    reader: &mut Reader<'_>,
    wanted: &'static str,
    deepest: usize,
    left: &mut usize,
) -> Result<Map<String, Value>, Refusal> {
    let mut table = Map::new();
    reader.object(wanted, |reader, key| {
        table.insert(key.to_owned(), value(reader, deepest, left)?);
        Ok(())
    })?;
    Ok(table)
}

fn value(reader: &mut Reader<'_>, deepest: usize, left: &mut usize) -> Result<Value, Refusal> {
    let Some(below) = deepest.checked_sub(1) else {
        let deepest = DEEPEST;
        return Err(reader.refuse(ShapeFault::TooDeep { deepest }));
    };
    *left = left.checked_sub(1).ok_or_else(|| {
        let most = MOST_SETTINGS;
        reader.refuse(ShapeFault::TooMany { most })
    })?;
    const WANTED: &str = "a value";
    match reader.kind()? {
        Kind::Object => table(reader, WANTED, below, left).map(Value::Object),
        Kind::List => reader
            .list(WANTED, MOST_SETTINGS, |reader| value(reader, below, left))
            .map(Value::Array),
        Kind::Text => reader.text(WANTED).map(Value::String),
        Kind::Truth => reader.truth(WANTED).map(Value::Bool),
        Kind::Null => reader.null().map(|()| Value::Null),
        Kind::Number => {
            let digits = reader.digits(WANTED)?;
            let number = digits.parse::<Number>().ok();
            let finite = number.filter(|n| n.as_f64().is_some_and(f64::is_finite));
            finite.map(Value::Number).ok_or_else(|| {
                let number = quotable(digits);
                reader.refuse(ShapeFault::TooGreat { number })
            })
        }
    }
}

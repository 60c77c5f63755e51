//! A value of a file into a table, every fault with its path.

use super::SettingFault;
use serde::de::value::StrDeserializer;
use serde::de::{
    self, DeserializeSeed, Deserializer, IntoDeserializer, MapAccess, SeqAccess, Visitor,
};
use serde::forward_to_deserialize_any;
use serde_json::{Map, Value};

/// A value that is read; what it lacks is said below the path of the key that holds it.
pub(super) struct At<'v>(pub &'v Value);

impl<'de> Deserializer<'de> for At<'de> {
    type Error = SettingFault;

    fn deserialize_any<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, SettingFault> {
        match self.0 {
            Value::Null => visitor.visit_unit(),
            Value::Bool(truth) => visitor.visit_bool(*truth),
            Value::Number(number) => match (number.as_u64(), number.as_f64()) {
                (Some(whole), _) => visitor.visit_u64(whole),
                (None, Some(number)) => visitor.visit_f64(number),
                (None, None) => Err(de::Error::invalid_type(
                    de::Unexpected::Other("number"),
                    &visitor,
                )),
            },
            Value::String(text) => visitor.visit_borrowed_str(text),
            Value::Array(values) => visitor.visit_seq(Places { values, next: 0 }),
            Value::Object(table) => visitor.visit_map(Keys {
                left: table.iter(),
                value: None,
            }),
        }
    }

    /// `2.0` is as whole as `2`.
    fn deserialize_u32<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, SettingFault> {
        let whole = self
            .0
            .as_f64()
            .filter(|number| number.fract() == 0.0 && (0.0..=f64::from(u32::MAX)).contains(number));
        match whole {
            Some(number) => visitor.visit_u32(number as u32),
            None => self.deserialize_any(visitor),
        }
    }

    fn deserialize_enum<V: Visitor<'de>>(
        self,
        name: &'static str,
        variants: &'static [&'static str],
        visitor: V,
    ) -> Result<V::Value, SettingFault> {
        match self.0 {
            Value::String(text) => {
                let word: StrDeserializer<'de, SettingFault> = text.as_str().into_deserializer();
                word.deserialize_enum(name, variants, visitor)
            }
            Value::Null
            | Value::Bool(_)
            | Value::Number(_)
            | Value::Array(_)
            | Value::Object(_) => self.deserialize_any(visitor),
        }
    }

    /// A table has keys: a list of values in the order of its fields is none.
    fn deserialize_struct<V: Visitor<'de>>(
        self,
        _: &'static str,
        _: &'static [&'static str],
        visitor: V,
    ) -> Result<V::Value, SettingFault> {
        if self.0.is_array() {
            return Err(de::Error::invalid_type(de::Unexpected::Seq, &visitor));
        }
        self.deserialize_any(visitor)
    }

    forward_to_deserialize_any! {
        bool i8 i16 i32 i64 i128 u8 u16 u64 u128 f32 f64 char str string bytes byte_buf option unit
        unit_struct newtype_struct seq tuple tuple_struct map identifier ignored_any
    }
}

/// A table, key by key.
struct Keys<'v> {
    left: serde_json::map::Iter<'v>,
    value: Option<(&'v String, &'v Value)>,
}

impl<'de> MapAccess<'de> for Keys<'de> {
    type Error = SettingFault;

    fn next_key_seed<K: DeserializeSeed<'de>>(
        &mut self,
        seed: K,
    ) -> Result<Option<K::Value>, SettingFault> {
        self.value = self.left.next();
        let Some((key, _)) = self.value else {
            return Ok(None);
        };
        let key: StrDeserializer<'de, SettingFault> = key.as_str().into_deserializer();
        seed.deserialize(key).map(Some)
    }

    fn next_value_seed<V: DeserializeSeed<'de>>(
        &mut self,
        seed: V,
    ) -> Result<V::Value, SettingFault> {
        match self.value {
            Some((key, value)) => seed
                .deserialize(At(value))
                .map_err(|fault| fault.below_key(key)),
            None => Err(de::Error::custom("a value was asked for before its key")),
        }
    }
}

/// A list, place by place.
struct Places<'v> {
    values: &'v [Value],
    next: usize,
}

impl<'de> SeqAccess<'de> for Places<'de> {
    type Error = SettingFault;

    fn next_element_seed<T: DeserializeSeed<'de>>(
        &mut self,
        seed: T,
    ) -> Result<Option<T::Value>, SettingFault> {
        let place = self.next;
        self.next += 1;
        self.values
            .get(place)
            .map(|value| {
                seed.deserialize(At(value))
                    .map_err(|fault| fault.below_place(place))
            })
            .transpose()
    }
}

/// TOML as the values that JSON has; a date becomes its text.
pub(super) fn from_toml(table: toml::Table) -> Map<String, Value> {
    table
        .into_iter()
        .map(|(key, value)| (key, value_from_toml(value)))
        .collect()
}

fn value_from_toml(value: toml::Value) -> Value {
    match value {
        toml::Value::String(text) => Value::String(text),
        toml::Value::Integer(number) => Value::from(number),
        toml::Value::Float(number) => Value::from(number),
        toml::Value::Boolean(truth) => Value::Bool(truth),
        toml::Value::Datetime(day) => Value::String(day.to_string()),
        toml::Value::Array(values) => values.into_iter().map(value_from_toml).collect(),
        toml::Value::Table(table) => Value::Object(from_toml(table)),
    }
}

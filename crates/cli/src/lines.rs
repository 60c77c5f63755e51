use serde_json::ser::Formatter;
use std::io::{self, Write};

/// JSON in lines a person can read: what lies deep, a leg, a place, a row of names, stays in one.
#[derive(Debug, Default)]
pub struct Lines {
    depth: usize,
    has_value: bool,
}

/// Containers inside this many others stay in one line.
const DEEP: usize = 4;

impl Lines {
    fn begin<W: ?Sized + Write>(&mut self, out: &mut W, sign: &[u8]) -> io::Result<()> {
        self.depth += 1;
        self.has_value = false;
        out.write_all(sign)
    }

    fn end<W: ?Sized + Write>(&mut self, out: &mut W, sign: &[u8]) -> io::Result<()> {
        self.depth -= 1;
        if self.has_value && self.depth < DEEP {
            self.new_line(out)?;
        }
        self.has_value = true;
        out.write_all(sign)
    }

    fn next<W: ?Sized + Write>(&self, out: &mut W) -> io::Result<()> {
        if self.has_value {
            out.write_all(if self.depth > DEEP { b", " } else { b"," })?;
        }
        if self.depth <= DEEP {
            self.new_line(out)?;
        }
        Ok(())
    }

    fn new_line<W: ?Sized + Write>(&self, out: &mut W) -> io::Result<()> {
        const SPACES: [u8; 2 * DEEP + 1] = *b"\n        ";
        out.write_all(&SPACES[..=2 * self.depth.min(DEEP)])
    }
}

impl Formatter for Lines {
    fn begin_array<W: ?Sized + Write>(&mut self, out: &mut W) -> io::Result<()> {
        self.begin(out, b"[")
    }

    fn end_array<W: ?Sized + Write>(&mut self, out: &mut W) -> io::Result<()> {
        self.end(out, b"]")
    }

    fn begin_array_value<W: ?Sized + Write>(
        &mut self,
        out: &mut W,
        _first: bool,
    ) -> io::Result<()> {
        self.next(out)
    }

    fn end_array_value<W: ?Sized + Write>(&mut self, _out: &mut W) -> io::Result<()> {
        self.has_value = true;
        Ok(())
    }

    fn begin_object<W: ?Sized + Write>(&mut self, out: &mut W) -> io::Result<()> {
        self.begin(out, b"{")
    }

    fn end_object<W: ?Sized + Write>(&mut self, out: &mut W) -> io::Result<()> {
        self.end(out, b"}")
    }

    fn begin_object_key<W: ?Sized + Write>(&mut self, out: &mut W, _first: bool) -> io::Result<()> {
        self.next(out)
    }

    fn begin_object_value<W: ?Sized + Write>(&mut self, out: &mut W) -> io::Result<()> {
        out.write_all(b": ")
    }

    fn end_object_value<W: ?Sized + Write>(&mut self, _out: &mut W) -> io::Result<()> {
        self.has_value = true;
        Ok(())
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use serde::Serialize;
    use serde_json::json;

    #[test]
    fn what_lies_deep_stays_in_one_line() {
        let told = json!({ "bodies": [ { "id": "main", "legs": [ { "leg": 0, "sigma": null } ] } ], "faces": [] });
        let mut out = Vec::new();
        told.serialize(&mut serde_json::Serializer::with_formatter(
            &mut out,
            Lines::default(),
        ))
        .unwrap();
        let text = String::from_utf8(out).unwrap();
        assert_eq!(
            text,
            r#"{
  "bodies": [
    {
      "id": "main",
      "legs": [
        {"leg": 0, "sigma": null}
      ]
    }
  ],
  "faces": []
}"#
        );
        assert_eq!(
            serde_json::from_str::<serde_json::Value>(&text).unwrap(),
            told
        );
    }
}

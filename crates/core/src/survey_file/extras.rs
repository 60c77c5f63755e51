//! Walls, penetrations, deck, covering and hearsay.

use super::json::Reader;
use super::measures::{self, Least, inches, length, name, number_from, point};
use super::refusal::{ExtraFault, Refusal};
use crate::survey::{Covering, Deck, Hearsay, Penetration, PenetrationKind, Place, WallSegment};
use crate::units::{Length, quotable};

/// Places in a list of walls or penetrations; of figures from others.
const MOST: usize = 2000;
const MOST_HEARSAY: usize = 100;
pub(super) fn walls(reader: &mut Reader<'_>) -> Result<Vec<WallSegment>, Refusal> {
    reader.list("a list of walls", MOST, |reader| {
        let (mut from, mut to, mut top) = (None, None, None);
        reader.object("a wall with from, to and top", |reader, key| {
            match key {
                "from" => from = Some(point(reader)?),
                "to" => to = Some(point(reader)?),
                "top" => top = Some(length(reader, Least::AboveZero)?),
                _ => return Err(reader.unknown_key(key, &["from", "to", "top"])),
            }
            Ok(())
        })?;
        let wall = WallSegment {
            from: reader.must_have(from, "from", "\"from\": [x, y]")?,
            to: reader.must_have(to, "to", "\"to\": [x, y]")?,
            top: reader.must_have(top, "top", "\"top\": 18, feet above ground")?,
        };
        if wall.from == wall.to {
            return Err(reader.refuse(ExtraFault::WallWithoutLength));
        }
        Ok(wall)
    })
}

/// What a penetration said of its size, by key.
#[derive(Default)]
struct Size {
    size_in: Option<Length>,
    width: Option<Length>,
    depth: Option<Length>,
}

pub(super) fn penetrations(reader: &mut Reader<'_>) -> Result<Vec<Penetration>, Refusal> {
    const KEYS: &[&str] = &["kind", "size_in", "width", "depth", "at", "face_of"];
    reader.list("a list of penetrations", MOST, |reader| {
        let mut kind: Option<String> = None;
        let mut size = Size::default();
        let (mut at, mut face_of) = (None, None);
        reader.object("a penetration with kind and at", |reader, key| {
            match key {
                "kind" => kind = Some(reader.text("a kind such as \"pipe\"")?),
                "size_in" => size.size_in = Some(inches(reader, Least::AboveZero)?),
                "width" => size.width = Some(length(reader, Least::AboveZero)?),
                "depth" => size.depth = Some(length(reader, Least::AboveZero)?),
                "at" => at = Some(point(reader)?),
                "face_of" => {
                    let [body, leg] = reader.pair("a body and a leg of it", measures::index)?;
                    face_of = Some(Place::FaceOf { body, leg });
                }
                _ => return Err(reader.unknown_key(key, KEYS)),
            }
            Ok(())
        })?;
        let kind = reader.must_have(kind, "kind", "\"kind\": \"pipe\"")?;
        let kind = sized(&kind, &size).map_err(|fault| reader.refuse(fault))?;
        let at = match (at, face_of) {
            (Some(_), Some(_)) => return Err(reader.refuse(ExtraFault::TwoPlaces)),
            (None, Some(face)) => face,
            (at, None) => Place::Plan(reader.must_have(at, "at", "\"at\": [x, y]")?),
        };
        Ok(Penetration { kind, at })
    })
}

fn sized(kind: &str, size: &Size) -> Result<PenetrationKind, ExtraFault> {
    match kind {
        "pipe" => size
            .round("pipe")
            .map(|size| PenetrationKind::Pipe { size }),
        "mast" => size
            .round("mast")
            .map(|size| PenetrationKind::Mast { size }),
        "flue" => size
            .round("flue")
            .map(|size| PenetrationKind::Flue { size }),
        "chimney" => {
            let [width, depth] = size.rectangle("chimney")?;
            Ok(PenetrationKind::Chimney { width, depth })
        }
        "skylight" => {
            let [width, depth] = size.rectangle("skylight")?;
            Ok(PenetrationKind::Skylight { width, depth })
        }
        "box vent" => size.none("box vent").map(|()| PenetrationKind::BoxVent),
        "fan" => size.none("fan").map(|()| PenetrationKind::Fan),
        "dish" => size.none("dish").map(|()| PenetrationKind::Dish),
        "solar" => size.none("solar").map(|()| PenetrationKind::Solar),
        "other" => size.none("other").map(|()| PenetrationKind::Other),
        other => Err(ExtraFault::UnknownKind {
            kind: quotable(other),
        }),
    }
}

impl Size {
    fn round(&self, kind: &'static str) -> Result<Length, ExtraFault> {
        self.refuse("width", self.width, kind)?;
        self.refuse("depth", self.depth, kind)?;
        self.size_in.ok_or(ExtraFault::SizeMissing {
            kind,
            key: "size_in",
            example: "\"size_in\": 3",
        })
    }

    fn rectangle(&self, kind: &'static str) -> Result<[Length; 2], ExtraFault> {
        self.refuse("size_in", self.size_in, kind)?;
        let missing = |key, example| ExtraFault::SizeMissing { kind, key, example };
        let width = self
            .width
            .ok_or(missing("width", "\"width\": 3, feet along the eave"))?;
        let depth = self
            .depth
            .ok_or(missing("depth", "\"depth\": 2, feet up the slope"))?;
        Ok([width, depth])
    }

    fn none(&self, kind: &'static str) -> Result<(), ExtraFault> {
        self.refuse("size_in", self.size_in, kind)?;
        self.refuse("width", self.width, kind)?;
        self.refuse("depth", self.depth, kind)
    }

    fn refuse(
        &self,
        key: &'static str,
        given: Option<Length>,
        kind: &'static str,
    ) -> Result<(), ExtraFault> {
        match given {
            Some(_) => Err(ExtraFault::SizeNotHere { kind, key }),
            None => Ok(()),
        }
    }
}

pub(super) fn deck(reader: &mut Reader<'_>) -> Result<Deck, Refusal> {
    const KEYS: &[&str] = &["kind", "plank_width_in", "gap_in"];
    let (mut kind, mut plank_width, mut gap) = (None, None, None);
    reader.object("a deck such as {\"kind\": \"plank\"}", |reader, key| {
        match key {
            "kind" => kind = Some(name(reader, "a kind of deck")?),
            "plank_width_in" => plank_width = Some(inches(reader, Least::AboveZero)?),
            "gap_in" => gap = Some(inches(reader, Least::Zero)?),
            _ => return Err(reader.unknown_key(key, KEYS)),
        }
        Ok(())
    })?;
    Ok(Deck {
        kind,
        plank_width,
        gap,
    })
}

pub(super) fn covering(reader: &mut Reader<'_>) -> Result<Covering, Refusal> {
    const MOST_LAYERS: u32 = 10;
    let (mut kind, mut layers) = (None, None);
    let wanted = "a covering such as {\"kind\": \"strip shingle\", \"layers\": 1}";
    reader.object(wanted, |reader, key| {
        match key {
            "kind" => kind = Some(name(reader, "a kind of covering")?),
            "layers" => layers = Some(measures::count(reader, 1, MOST_LAYERS)?),
            _ => return Err(reader.unknown_key(key, &["kind", "layers"])),
        }
        Ok(())
    })?;
    Ok(Covering { kind, layers })
}

pub(super) fn hearsay(reader: &mut Reader<'_>) -> Result<Vec<Hearsay>, Refusal> {
    const KEYS: &[&str] = &["source", "living_area", "storeys", "garage", "roof_area"];
    const GREATEST_AREA: f64 = 1e8;
    reader.list("a list of what others say", MOST_HEARSAY, |reader| {
        let mut source = None;
        let (mut living_area, mut floors) = (None, None);
        let (mut garage, mut roof_area) = (None, None);
        reader.object("a source with its figures", |reader, key| {
            match key {
                "source" => source = Some(name(reader, "who says so")?),
                "living_area" => living_area = Some(number_from(reader, 1.0, GREATEST_AREA)?),
                "storeys" => floors = Some(number_from(reader, 0.5, 200.0)?),
                "garage" => garage = Some(number_from(reader, 0.0, GREATEST_AREA)?),
                "roof_area" => roof_area = Some(number_from(reader, 1.0, GREATEST_AREA)?),
                _ => return Err(reader.unknown_key(key, KEYS)),
            }
            Ok(())
        })?;
        Ok(Hearsay {
            source: reader.must_have(source, "source", "\"source\": \"public record\"")?,
            living_area,
            floors,
            garage,
            roof_area,
        })
    })
}

//! What was seen of the roof: compared with the computed one, never used for it.

use super::json::Reader;
use super::measures::{self, Least, length, sigma};
use super::refusal::{Refusal, SeenFault};
use crate::outline::default_sigma;
use crate::survey::{ObservedEnd, RoofObservation};
use crate::units::quotable;

/// Things seen; faces over one leg.
const MOST: usize = 2000;
const MOST_FACES: u32 = 100;

pub(super) fn seen(reader: &mut Reader<'_>) -> Result<Vec<RoofObservation>, Refusal> {
    const KEYS: &[&str] = &["leg", "end", "faces", "ridge_of", "over_eaves", "sigma"];
    reader.list("a list of what was seen", MOST, |reader| {
        let (mut leg, mut end, mut faces) = (None, None, None);
        let (mut ridge_of, mut over_eaves, mut spread) = (None, None, None);
        let wanted = "what was seen, {\"leg\": [0, 1], \"end\": \"gable\"}";
        reader.object(wanted, |reader, key| {
            match key {
                "leg" => leg = Some(reader.pair("a body and a leg of it", measures::index)?),
                "end" => end = Some(seen_end(reader)?),
                "faces" => faces = Some(measures::count(reader, 0, MOST_FACES)?),
                "ridge_of" => ridge_of = Some(measures::index(reader)?),
                "over_eaves" => over_eaves = Some(length(reader, Least::AboveZero)?),
                "sigma" => spread = Some(sigma(reader)?),
                _ => return Err(reader.unknown_key(key, KEYS)),
            }
            Ok(())
        })?;
        match (leg, end, faces, ridge_of, over_eaves, spread) {
            (Some([body, leg]), Some(end), None, None, None, None) => {
                Ok(RoofObservation::End { body, leg, end })
            }
            (Some([body, leg]), None, Some(count), None, None, None) => {
                Ok(RoofObservation::Faces {
                    body,
                    leg,
                    count: count as usize,
                })
            }
            (None, None, None, Some(body), Some(over_eaves), spread) => {
                Ok(RoofObservation::Ridge {
                    body,
                    over_eaves,
                    sigma: spread.unwrap_or(default_sigma(over_eaves)),
                })
            }
            _ => Err(reader.refuse(SeenFault::NotOneThing)),
        }
    })
}

fn seen_end(reader: &mut Reader<'_>) -> Result<ObservedEnd, Refusal> {
    match reader.text("gable or slope")?.as_str() {
        "gable" => Ok(ObservedEnd::Gable),
        "slope" => Ok(ObservedEnd::Slope),
        other => Err(reader.refuse(SeenFault::UnknownEnd {
            end: quotable(other),
        })),
    }
}

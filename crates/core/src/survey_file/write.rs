//! A survey as the text of a survey file, which reads back to the same survey.

use super::read::{FORMAT, SurveyFile};
use crate::settings::Chosen;
use crate::survey::{
    Body, Covering, Deck, Hearsay, LegEdge, ObservedEnd, Penetration, PenetrationKind,
    PitchReading, Place, PlacedFrom, Point, Reading, Rise, RoofObservation, Sketch, SlopePlace,
    Span, WallSegment, Way,
};
use crate::units::{Length, Pitch};
use serde::Serialize;
use serde_json::{Map, Value, json};

/// The text of a survey file: JSON, its keys in the order of the alphabet, one a line.
#[must_use]
pub fn write(file: &SurveyFile) -> String {
    let survey = &file.survey;
    let mut whole = Map::new();
    whole.insert("format".to_owned(), json!(FORMAT));
    whole.insert(
        "bodies".to_owned(),
        survey.bodies.iter().map(body).collect(),
    );
    list(&mut whole, "walls", &survey.walls, wall);
    list(
        &mut whole,
        "penetrations",
        &survey.penetrations,
        penetration,
    );
    list(&mut whole, "hearsay", &survey.hearsay, hearsay);
    list(&mut whole, "seen", &survey.seen, seen);
    some(&mut whole, "deck", survey.deck.as_ref().map(deck));
    some(
        &mut whole,
        "covering",
        survey.covering.as_ref().map(covering),
    );
    some(&mut whole, "rates", file.rates.as_ref().map(chosen));
    some(&mut whole, "code", file.code.as_ref().map(chosen));
    // A map of text and finite numbers: its alternate form is JSON on many lines.
    format!("{:#}\n", Value::Object(whole))
}

fn some(object: &mut Map<String, Value>, key: &str, value: Option<Value>) {
    if let Some(value) = value {
        object.insert(key.to_owned(), value);
    }
}

fn list<T>(object: &mut Map<String, Value>, key: &str, all: &[T], one: fn(&T) -> Value) {
    if !all.is_empty() {
        object.insert(key.to_owned(), all.iter().map(one).collect());
    }
}

fn point(at: Point) -> Value {
    json!([at.x, at.y])
}

fn body(body: &Body) -> Value {
    let mut object = Map::new();
    object.insert("id".to_owned(), json!(body.id));
    object.insert("eave_height".to_owned(), json!(body.eave_height.in_feet()));
    object.insert("outline".to_owned(), outline(body));
    some(
        &mut object,
        "from",
        body.placed_from.as_ref().map(placed_from),
    );
    list(&mut object, "readings", &body.readings, reading);
    list(&mut object, "edges", &body.edges, edge);
    Value::Object(object)
}

/// A body placed from another says no start of its own.
fn outline(body: &Body) -> Value {
    match &body.outline {
        Sketch::Known(corners) => {
            json!({ "corners": corners.iter().map(|at| point(*at)).collect::<Vec<Value>>() })
        }
        Sketch::Turned {
            start,
            heading,
            turns,
            turn_sigma,
        } => {
            let mut object = Map::new();
            if body.placed_from.is_none() {
                object.insert("start".to_owned(), point(*start));
            }
            object.insert("heading_deg".to_owned(), json!(heading.in_degrees()));
            let turns: Vec<f64> = turns.iter().map(|turn| turn.in_degrees()).collect();
            object.insert("turns_deg".to_owned(), json!(turns));
            object.insert("turn_sigma_deg".to_owned(), json!(turn_sigma.in_degrees()));
            Value::Object(object)
        }
    }
}

fn placed_from(from: &PlacedFrom) -> Value {
    json!({
        "body": from.body,
        "corner": from.corner,
        "offset": point(from.offset),
        "sigma": from.sigma.in_feet(),
    })
}

fn reading(reading: &Reading) -> Value {
    let mut object = Map::new();
    object.insert("id".to_owned(), json!(reading.id));
    match reading.span {
        Span::Leg(leg) => {
            object.insert("leg".to_owned(), json!(leg));
        }
        Span::Tie(from, to) => {
            object.insert("tie".to_owned(), json!([from, to]));
        }
        Span::Overall {
            from,
            to,
            along_leg,
        } => {
            object.insert("overall".to_owned(), json!([from, to]));
            object.insert("along_leg".to_owned(), json!(along_leg));
        }
        Span::WallOfLeg { leg, overhangs } => {
            object.insert("wall_of_leg".to_owned(), json!(leg));
            object.insert(
                "overhangs".to_owned(),
                json!(overhangs.map(Length::in_feet)),
            );
        }
    }
    let value = match &reading.text {
        Some(text) => json!(text),
        None => json!(reading.value.in_feet()),
    };
    object.insert("value".to_owned(), value);
    some(
        &mut object,
        "sigma",
        reading.sigma.map(|sigma| json!(sigma.in_feet())),
    );
    Value::Object(object)
}

fn edge(edge: &LegEdge) -> Value {
    let mut object = Map::new();
    let (key, value) = match &edge.rise {
        Rise::Unknown => ("end", json!("unknown")),
        Rise::Gable => ("end", json!("gable")),
        Rise::Wall => ("end", json!("wall")),
        Rise::Pitch(pitch) => ("pitch", json!(pitch.in_12())),
        Rise::SameAs(leg) => ("same_as", json!(leg)),
        Rise::PitchReadings(readings) => (
            "pitch_readings",
            readings.iter().map(pitch_reading).collect(),
        ),
        Rise::Bands(bands) => {
            let band = bands.iter().map(|band| {
                let mut object = Map::new();
                object.insert("pitch".to_owned(), json!(band.pitch.in_12()));
                some(
                    &mut object,
                    "rise",
                    band.rise.map(|rise| json!(rise.in_feet())),
                );
                Value::Object(object)
            });
            ("bands", band.collect())
        }
    };
    object.insert(key.to_owned(), value);
    some(
        &mut object,
        "overhang",
        edge.overhang.map(|over| json!(over.in_feet())),
    );
    Value::Object(object)
}

fn pitch_reading(reading: &PitchReading) -> Value {
    let pitch = Pitch::from_angle(reading.angle);
    let degrees = ("degrees", reading.angle.in_degrees());
    let ((key, read), flag) = match reading.way {
        Way::Forward => (degrees, None),
        Way::Reversed => (degrees, Some("reversed")),
        Way::LevelAndTape => (degrees, Some("level_and_tape")),
        Way::Sighted => (("sighted", pitch.in_12()), None),
        Way::Number => (("number", pitch.in_12()), None),
    };
    let mut object = Map::new();
    object.insert(key.to_owned(), json!(read));
    if let Some(flag) = flag {
        object.insert(flag.to_owned(), json!(true));
    }
    if let (Way::Sighted, Some(sigma)) = (reading.way, reading.sigma) {
        let sigma = sigma.in_degrees() / pitch.spread_in_angle(1.0).in_degrees();
        object.insert("sigma".to_owned(), json!(sigma));
    }
    if let Some(place) = reading.place {
        let place = match place {
            SlopePlace::NearEave => "near the eave",
            SlopePlace::AboveSecondCourse => "above the second course",
            SlopePlace::NearRidge => "near the ridge",
        };
        object.insert("place".to_owned(), json!(place));
    }
    Value::Object(object)
}

fn wall(wall: &WallSegment) -> Value {
    json!({ "from": point(wall.from), "to": point(wall.to), "top": wall.top.in_feet() })
}

fn penetration(thing: &Penetration) -> Value {
    let mut object = Map::new();
    let mut put = |key: &str, value: Value| object.insert(key.to_owned(), value);
    let (kind, sizes) = match thing.kind {
        PenetrationKind::Pipe { size } => ("pipe", vec![("size_in", size.in_inches())]),
        PenetrationKind::Mast { size } => ("mast", vec![("size_in", size.in_inches())]),
        PenetrationKind::Flue { size } => ("flue", vec![("size_in", size.in_inches())]),
        PenetrationKind::Chimney { width, depth } => ("chimney", rectangle(width, depth)),
        PenetrationKind::Skylight { width, depth } => ("skylight", rectangle(width, depth)),
        PenetrationKind::BoxVent => ("box vent", Vec::new()),
        PenetrationKind::Fan => ("fan", Vec::new()),
        PenetrationKind::Dish => ("dish", Vec::new()),
        PenetrationKind::Solar => ("solar", Vec::new()),
        PenetrationKind::Other => ("other", Vec::new()),
    };
    put("kind", json!(kind));
    for (key, size) in sizes {
        put(key, json!(size));
    }
    match thing.at {
        Place::Plan(at) => put("at", point(at)),
        Place::FaceOf { body, leg } => put("face_of", json!([body, leg])),
    };
    Value::Object(object)
}

fn rectangle(width: Length, depth: Length) -> Vec<(&'static str, f64)> {
    vec![("width", width.in_feet()), ("depth", depth.in_feet())]
}

fn deck(deck: &Deck) -> Value {
    let mut object = Map::new();
    some(
        &mut object,
        "kind",
        deck.kind.as_ref().map(|kind| json!(kind)),
    );
    let inches = |length: Option<Length>| length.map(|length| json!(length.in_inches()));
    some(&mut object, "plank_width_in", inches(deck.plank_width));
    some(&mut object, "gap_in", inches(deck.gap));
    Value::Object(object)
}

fn covering(covering: &Covering) -> Value {
    let mut object = Map::new();
    some(
        &mut object,
        "kind",
        covering.kind.as_ref().map(|kind| json!(kind)),
    );
    some(
        &mut object,
        "layers",
        covering.layers.map(|layers| json!(layers)),
    );
    Value::Object(object)
}

fn hearsay(said: &Hearsay) -> Value {
    let mut object = Map::new();
    object.insert("source".to_owned(), json!(said.source));
    let figures = [
        ("living_area", said.living_area),
        ("storeys", said.floors),
        ("garage", said.garage),
        ("roof_area", said.roof_area),
    ];
    for (key, figure) in figures {
        some(&mut object, key, figure.map(|figure| json!(figure)));
    }
    Value::Object(object)
}

fn seen(seen: &RoofObservation) -> Value {
    match *seen {
        RoofObservation::End { body, leg, end } => {
            let end = match end {
                ObservedEnd::Gable => "gable",
                ObservedEnd::Slope => "slope",
            };
            json!({"leg": [body, leg], "end": end})
        }
        RoofObservation::Faces { body, leg, count } => json!({"leg": [body, leg], "faces": count}),
        RoofObservation::Ridge {
            body,
            over_eaves,
            sigma,
        } => json!({
            "ridge_of": body,
            "over_eaves": over_eaves.in_feet(),
            "sigma": sigma.in_feet(),
        }),
    }
}

/// The name of a built-in, or all keys.
fn chosen<T: Serialize>(chosen: &Chosen<T>) -> Value {
    match chosen {
        Chosen::Demo(_) => json!("demo"),
        Chosen::Own(own) => json!(own),
    }
}

#[cfg(test)]
mod tests {
    use super::super::read::read;
    use super::*;

    fn again(text: &str) {
        let once = read(text.as_bytes()).unwrap();
        let written = write(&once);
        let twice =
            read(written.as_bytes()).unwrap_or_else(|refusal| unreachable!("{refusal}\n{written}"));
        // Degrees and inches pass through another unit: equal as printed to 9 places.
        assert_eq!(write(&twice), written);
        assert_eq!(twice.survey.bodies.len(), once.survey.bodies.len());
        for (after, before) in twice.survey.bodies.iter().zip(&once.survey.bodies) {
            assert_eq!(after.readings, before.readings);
            assert_eq!(after.edges.len(), before.edges.len());
        }
        assert_eq!(twice.survey.penetrations, once.survey.penetrations);
        assert_eq!(twice.survey.hearsay, once.survey.hearsay);
        assert_eq!(twice.survey.seen, once.survey.seen);
        assert_eq!((twice.rates, twice.code), (once.rates, once.code));
    }

    #[test]
    fn what_is_written_reads_back_to_what_was_read() {
        again(include_str!("../../../../assets/demo-house.json"));
        again(
            r#"{"format": "eavebook-survey/1", "bodies": [
              {"id": "main", "outline": {"corners": [[0,0],[40,0],[40,20],[0,20]]},
               "edges": [{"pitch": 6}, {"end": "gable"}, {"same_as": 0}, {"end": "unknown"}]},
              {"id": "low", "from": {"body": "main", "corner": 2, "offset": [1, 2], "sigma": 0.3},
               "eave_height": 9, "outline": {"turns_deg": [90, 90, 90, 90]},
               "readings": [{"leg": 0, "value": "12.63 ft"}, {"tie": [0, 2], "value": 17.5, "sigma": 0.4},
                 {"overall": [0, 2], "along_leg": 0, "value": 12.6},
                 {"wall_of_leg": 1, "value": 10, "overhangs": [1, 1]}],
               "edges": [{"bands": [{"pitch": 20, "rise": 8}, {"pitch": 4}]}, {"end": "wall", "overhang": 1},
                 {"pitch_readings": [{"degrees": 26.5}, {"degrees": 26, "reversed": true},
                   {"degrees": 26.3, "level_and_tape": true}]}, {"end": "gable"}]}],
              "walls": [{"from": [0,0], "to": [10,0], "top": 18}],
              "penetrations": [{"kind": "flue", "size_in": 6, "at": [3, 4]}, {"kind": "solar", "face_of": [0, 2]},
                {"kind": "skylight", "width": 2, "depth": 4, "at": [5, 5]}],
              "deck": {"kind": "plank", "plank_width_in": 5.5, "gap_in": 0.25},
              "covering": {"kind": "strip shingle", "layers": 2},
              "hearsay": [{"source": "a record", "living_area": 1200, "storeys": 1.5}],
              "seen": [{"leg": [0, 1], "end": "gable"}, {"leg": [0, 0], "faces": 2},
                {"ridge_of": 1, "over_eaves": 5.5, "sigma": 0.4}],
              "rates": "demo", "code": "demo"}"#,
        );
    }
}

//! Faces and edges given as they are, so that a takeoff is asked for shapes that no survey makes.

use eavebook_core::price::price;
use eavebook_core::result::result;
use eavebook_core::roof::{Edge, EdgeKind, Face, Roof};
use eavebook_core::settings::{Blanks, Code, Rates};
use eavebook_core::solve::{Priced, solve};
use eavebook_core::survey::{Body, Covering, Deck, LegEdge, Point, Rise, Sketch, Survey};
use eavebook_core::takeoff::take_off;
use eavebook_core::units::{Area, Length, Pitch, Point3};
use serde_json::{Map, Value};

/// Takeoff and price of the faces of a case, as the result prints them.
pub fn answer(case: &Value) -> Result<Value, String> {
    let survey = survey(case);
    let roof = Roof {
        faces: list(&case["faces"]).map(face).collect(),
        edges: list(&case["edges"]).map(edge).collect(),
        cautions: Vec::new(),
    };
    let rates = Rates::read(table(&case["rates"]), Blanks::Refused).map_err(|it| it.to_string())?;
    let code = Code::read(table(&case["code"])).map_err(|it| it.to_string())?;
    let sigma = Area::square_feet(number(&case["area_sigma"]));
    let takeoff = take_off(&survey, &roof, sigma, &rates, &code).map_err(|it| it.to_string())?;
    let price = price(&takeoff, &rates);
    let priced = Priced {
        takeoff,
        price,
        area_sigma: sigma,
    };
    // The outline of such a body is of no account: the roof is given.
    let solved = solve(&survey).map_err(|it| it.to_string())?;
    let result = result(&survey, &solved).with_price(&survey, &roof, &priced);
    serde_json::to_value(result).map_err(|it| it.to_string())
}

fn list(value: &Value) -> impl Iterator<Item = &Value> {
    value.as_array().expect("a list").iter()
}

fn table(value: &Value) -> &Map<String, Value> {
    value.as_object().expect("a table")
}

fn number(value: &Value) -> f64 {
    value.as_f64().expect("a number")
}

fn index(value: &Value) -> usize {
    usize::try_from(value.as_u64().expect("an index")).expect("an index")
}

/// One body that carries overhangs and eave height; every face is over a leg of it.
fn survey(case: &Value) -> Survey {
    let overhang = |leg: usize| {
        let face = list(&case["faces"]).find(|face| index(&face["leg"]) == leg);
        let overhang = face.and_then(|face| face["overhang"].as_f64());
        overhang.map(Length::feet)
    };
    let part = &case["survey_part"];
    let text = |value: &Value| value.as_str().map(str::to_owned);
    let square = [[0.0, 0.0], [30.0, 0.0], [30.0, 20.0], [0.0, 20.0]];
    Survey {
        bodies: vec![Body {
            id: "b".to_owned(),
            eave_height: Length::feet(number(&case["faces"][0]["eave_height"])),
            outline: Sketch::Known(square.map(|[x, y]| Point { x, y }).to_vec()),
            readings: Vec::new(),
            edges: (0..4)
                .map(|leg| LegEdge {
                    rise: Rise::Unknown,
                    overhang: overhang(leg),
                })
                .collect(),
            placed_from: None,
        }],
        covering: Some(Covering {
            kind: text(&part["covering"]["kind"]),
            layers: part["covering"]["layers"]
                .as_u64()
                .map(|it| u32::try_from(it).expect("layers")),
        }),
        deck: Some(Deck {
            kind: text(&part["deck"]["kind"]),
            plank_width: None,
            gap: part["deck"]["gap_in"].as_f64().map(Length::inches),
        }),
        ..Survey::default()
    }
}

fn place(value: &Value) -> [f64; 3] {
    let place: Vec<f64> = list(value).map(number).collect();
    place.try_into().expect("x, y and height")
}

/// Area and slope from the corners alone.
fn face(value: &Value) -> Face {
    let polygon: Vec<[f64; 3]> = list(&value["polygon"]).map(place).collect();
    let [x, y, z] = normal(&polygon);
    Face {
        body: 0,
        leg: index(&value["leg"]),
        band: None,
        pitch: Pitch::rise_in_12(12.0 * x.hypot(y) / z.abs()),
        plan_area: Area::square_feet(z.abs() / 2.0),
        area: Area::square_feet(x.hypot(y).hypot(z) / 2.0),
        polygon: polygon.into_iter().map(Point3::feet).collect(),
        holes: Vec::new(),
    }
}

fn normal(polygon: &[[f64; 3]]) -> [f64; 3] {
    let mut sum = [0.0; 3];
    for (a, b) in polygon.iter().zip(polygon.iter().cycle().skip(1)) {
        for (axis, sum) in sum.iter_mut().enumerate() {
            let (next, last) = ((axis + 1) % 3, (axis + 2) % 3);
            *sum += a[next] * b[last] - a[last] * b[next];
        }
    }
    sum
}

/// An edge of the length and rise given. A side wall whose foot is on an eave starts on the first
/// eave, any other far from all.
fn edge(value: &Value) -> Edge {
    let kind = match value["kind"].as_str().expect("a kind") {
        "eave" => EdgeKind::Eave,
        "rake" => EdgeKind::Rake,
        "ridge" => EdgeKind::Ridge,
        "hip" => EdgeKind::Hip,
        "valley" => EdgeKind::Valley,
        "side wall" => EdgeKind::SideWall,
        "head wall" => EdgeKind::HeadWall,
        other => panic!("no edge is a {other}"),
    };
    let (length, rise) = (number(&value["length"]), number(&value["rise"]));
    let on_an_eave = kind == EdgeKind::Eave || value["foot_on_eave"].as_bool() == Some(true);
    let from = if on_an_eave {
        [0.0, 0.0, 9.0]
    } else {
        [0.0, 5_000.0, 9.0]
    };
    let run = (length * length - rise * rise).max(0.0).sqrt();
    Edge {
        kind,
        length: Length::feet(length),
        from: Point3::feet(from),
        to: Point3::feet([from[0] + run, from[1], from[2] + rise]),
        faces: list(&value["faces"]).map(index).collect(),
    }
}

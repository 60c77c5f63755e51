//! Figures that nobody measured and prices that nobody asks: answered soon, or refused in a
//! sentence.

use crate::shapes::{edge, face, roof, survey};
use eavebook_core::price::price;
use eavebook_core::roof::{EdgeKind, Roof};
use eavebook_core::settings::{Blanks, Code, Rates};
use eavebook_core::takeoff::{NoTakeoff, take_off};
use eavebook_core::units::Area;
use serde_json::{Map, Value};

/// Two slopes of a roof as large as a survey file takes.
fn vast() -> Roof {
    let ring = [
        [0.0, 0.0],
        [10_000.0, 0.0],
        [10_000.0, 5_000.0],
        [0.0, 5_000.0],
    ];
    roof(
        vec![
            face(0, 6.0, &ring, 0.0, [0.0, 0.0]),
            face(2, 6.0, &ring, 180.0, [0.0, 0.0]),
        ],
        vec![
            edge(EdgeKind::Eave, 10_000.0, 0.0, &[0]),
            edge(EdgeKind::Ridge, 10_000.0, 0.0, &[0, 1]),
            edge(EdgeKind::Valley, 9_000.0, 3_000.0, &[0, 1]),
            edge(EdgeKind::SideWall, 9_000.0, 3_000.0, &[0]),
        ],
    )
}

/// Every number of some tables as great, every amount as dear, as the limits allow; lengths that
/// divide as small.
fn extreme(
    value: &mut Value,
    path: &str,
    of: &impl Fn(&str) -> Vec<Value>,
    takes: &impl Fn(&str, &Value) -> bool,
) {
    match value {
        Value::Object(table) => {
            for (key, value) in table.iter_mut() {
                extreme(value, &format!("{path}.{key}"), of, takes);
            }
        }
        Value::Array(_) | Value::Number(_) | Value::String(_) => {
            let same_kind = |it: &Value| {
                (it.is_string(), it.is_array()) == (value.is_string(), value.is_array())
            };
            let candidates = of(path).into_iter();
            let mut fits = candidates.filter(|it| same_kind(it) && takes(path, it));
            if let Some(most) = fits.next() {
                *value = most;
            }
        }
        Value::Null | Value::Bool(_) => {}
    }
}

fn read(value: &Value) -> Result<Rates, String> {
    let table: &Map<String, Value> = value.as_object().unwrap();
    Rates::read(table, Blanks::Refused).map_err(|fault| fault.to_string())
}

#[test]
fn rates_at_their_limits_on_a_vast_roof_are_priced_without_overflow() {
    let demo = Rates::demo();
    let mut value = demo.to_value();
    let candidates = |path: &str| -> Vec<Value> {
        let small = [
            "per_pack",
            "_ft",
            "_sqft",
            "per_lb",
            "box_lb",
            "payload_lb",
            "volume_cuyd",
        ];
        let wide = [
            "piece_in",
            "exposure_in",
            "height_in",
            "stagger_in",
            "width_in",
            "lap_in",
            "set_back_ft",
        ];
        if wide.iter().any(|it| path.ends_with(it)) {
            return Vec::new();
        }
        if small.iter().any(|it| path.ends_with(it)) {
            return [0.1, 1.0].map(Value::from).to_vec();
        }
        let numbers = [1e6, 1000.0, 100.0].map(Value::from);
        let triangles = [1000.0, 100.0].map(|it| Value::from(vec![it; 3]));
        let texts = ["100000000", "99.99"].map(Value::from);
        [&numbers[..], &triangles[..], &texts[..]].concat()
    };
    let takes = |path: &str, it: &Value| {
        let key = path.trim_start_matches('.');
        let text = it.as_str().map_or_else(|| it.to_string(), str::to_owned);
        demo.with(key, &text).is_ok()
    };
    extreme(&mut value, "", &candidates, &takes);
    let rates = read(&value).unwrap();
    assert!(
        rates.field.margin_percent.value() > 100.0
            && rates.price.profit_percent.to_string() == "99.99"
    );
    let roof = vast();
    let takeoff = take_off(
        &survey(),
        &roof,
        Area::square_feet(1e6),
        &rates,
        &Code::demo(),
    )
    .unwrap();
    let price = price(&takeoff, &rates);
    assert!(price.low < price.total && price.total < price.high);
    assert!(price.total.as_decimal().to_string().len() < 40);
}

#[test]
fn courses_past_counting_are_refused_with_the_key_to_mend() {
    let rates = Rates::demo().with("field.exposure_in", "0.1").unwrap();
    let told = take_off(&survey(), &vast(), Area::ZERO, &rates, &Code::demo());
    assert_eq!(
        told.unwrap_err().to_string(),
        "leg 0 of body 0 makes the faces take more courses than are counted: write a wider exposure_in in the rates, or look at the lengths of the legs"
    );
}

#[test]
fn a_vast_roof_at_the_demo_rates_is_counted() {
    let takeoff = take_off(
        &survey(),
        &vast(),
        Area::ZERO,
        &Rates::demo(),
        &Code::demo(),
    )
    .unwrap();
    // 5,000 ft up the slope at 5 in.
    assert_eq!(takeoff.courses[0].courses, 12_000);
}

#[test]
fn a_roof_past_building_is_refused() {
    let ring = [[0.0, 0.0], [1e5, 0.0], [1e5, 1e5], [0.0, 1e5]];
    let roof = roof(vec![face(0, 6.0, &ring, 0.0, [0.0, 0.0])], Vec::new());
    let told = take_off(&survey(), &roof, Area::ZERO, &Rates::demo(), &Code::demo());
    assert_eq!(told, Err(NoTakeoff::TooLarge));
    assert_eq!(
        NoTakeoff::TooLarge.to_string(),
        "the roof is over 1,000,000,000 sq ft: look at the lengths of its legs"
    );
}

#[test]
fn a_face_without_area_or_height_is_laid_with_nothing() {
    for ring in [
        vec![[0.0, 0.0], [10.0, 0.0], [5.0, 0.0]],
        vec![[0.0, 0.0], [0.005, 0.0], [0.005, 20.0], [0.0, 20.0]],
        vec![[0.0, 0.0]],
        Vec::new(),
    ] {
        let roof = roof(vec![face(0, 6.0, &ring, 0.0, [0.0, 0.0])], Vec::new());
        let takeoff = take_off(
            &survey(),
            &roof,
            Area::square_feet(1.0),
            &Rates::demo(),
            &Code::demo(),
        )
        .unwrap();
        assert_eq!(takeoff.laid.new_pieces, 0, "{ring:?}");
        let price = price(&takeoff, &Rates::demo());
        assert!(price.low <= price.total && price.total <= price.high);
    }
}

#[test]
fn a_list_of_ten_thousand_fixed_amounts_is_refused() {
    let mut value = Rates::demo().to_value();
    let line = serde_json::json!(["permit", "150.00"]);
    value["price"]["fixed"] = Value::Array(vec![line; 10_000]);
    assert_eq!(
        read(&value).unwrap_err(),
        "rates.price.fixed: the list has 10000 places: write 1 to 200"
    );
}

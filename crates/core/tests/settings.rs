//! Rates and code profiles: what is taken, and what is refused in which sentence.
#![allow(
    clippy::unwrap_used,
    clippy::panic,
    reason = "a test fails by panicking"
)]
#![allow(
    clippy::float_cmp,
    reason = "a figure is read to the last bit as it was written"
)]

use eavebook_core::settings::{Blanks, Code, Pool, Rates, ValleyKind};
use eavebook_core::units::{Measure, Money, Pitch};
use serde_json::{Map, Value, json};

fn table(value: Value) -> Map<String, Value> {
    let Value::Object(table) = value else {
        panic!("no table: {value}");
    };
    table
}

/// The demo's rates with what stands at a path replaced, or taken out by null at a whole key.
fn rates_with(pointer: &str, value: Value) -> String {
    let mut rates = Rates::demo().to_value();
    let (parent, key) = pointer.rsplit_once('/').unwrap();
    let parent = rates.pointer_mut(parent).unwrap();
    parent[key] = value;
    refusal(rates)
}

fn refusal(rates: Value) -> String {
    Rates::read(&table(rates), Blanks::Refused)
        .unwrap_err()
        .to_string()
}

#[test]
fn the_demo_is_read_key_for_key() {
    let rates = Rates::demo();
    assert_eq!((rates.field.piece_in.value(), rates.field.steps), (36.0, 2));
    assert_eq!(rates.field.pool, Pool::Roof);
    assert_eq!(rates.valley.kind, ValleyKind::OpenMetal);
    assert_eq!(rates.boots.pipe["1.5"], Some(Money::read("8.50").unwrap()));
    assert_eq!(rates.price.fixed.len(), 1);
    assert_eq!(
        Rates::read(&table(rates.to_value()), Blanks::Refused),
        Ok(rates)
    );
    let code = Code::demo();
    assert_eq!(
        (code.date.as_str(), code.ice_barrier.inside_in),
        ("2024-05-01", Measure::new(24.0))
    );
    assert_eq!(Code::read(&table(code.to_value())), Ok(code));
}

#[test]
fn a_key_that_is_unknown_or_missing_is_refused_by_its_path() {
    let mut rates = Rates::demo().to_value();
    rates["field"]["colour"] = json!("red");
    assert!(refusal(rates).starts_with(
        "rates.field.colour: the key is not known here: take it out or mend its name, known are piece_in, height_in, "
    ));
    let mut rates = Rates::demo().to_value();
    table(rates.clone());
    rates["field"]
        .as_object_mut()
        .unwrap()
        .remove("exposure_in");
    assert_eq!(
        refusal(rates),
        "rates.field.exposure_in: the key is missing: give it, in the unit that its name says"
    );
    let mut rates = Rates::demo().to_value();
    rates.as_object_mut().unwrap().remove("trailer");
    assert!(refusal(rates).starts_with("rates.trailer: the key is missing"));
    let mut rates = Rates::demo().to_value();
    rates["boots"]["mast"]
        .as_object_mut()
        .unwrap()
        .remove("other");
    assert_eq!(
        refusal(rates),
        "rates.boots.mast.other: the key is missing: give the figure for what is not listed"
    );
}

#[test]
fn each_figure_that_cannot_be_is_refused_with_its_remedy() {
    let said = [
        (
            "/field/price",
            json!(34.5),
            "rates.field.price: write money as text, such as \"34.50\" here, not the number 34.5",
        ),
        (
            "/field/price",
            json!("34,50"),
            "rates.field.price: \"34,50\" is no amount of money: write digits with a point, such as 1234.50",
        ),
        (
            "/field/price",
            json!(null),
            "rates.field.price: the price is missing: write money as text, such as \"34.50\"",
        ),
        (
            "/field/price",
            json!("-1"),
            "rates.field.price: -1 is below 0: write 0 or more",
        ),
        (
            "/boots/pipe/3",
            json!(11),
            "rates.boots.pipe.3: write money as text, such as \"34.50\" here, not the number 11",
        ),
        (
            "/price/fixed",
            json!([["permit", 150]]),
            "rates.price.fixed[0][1]: write money as text, such as \"34.50\" here, not the number 150",
        ),
        (
            "/field/steps",
            json!(0),
            "rates.field.steps: 0 cannot be: write a number above 0",
        ),
        (
            "/field/piece_in",
            json!(0),
            "rates.field.piece_in: 0 cannot be: write a number above 0",
        ),
        (
            "/field/steps",
            json!(1.5),
            "rates.field.steps: write a whole number here, not the number 1.5",
        ),
        (
            "/field/steps",
            json!(1e9),
            "rates.field.steps: 1000000000 is out of range: write a number from 1 to 1000",
        ),
        (
            "/field/exposure_in",
            json!(-5),
            "rates.field.exposure_in: -5 is below 0: write 0 or more",
        ),
        (
            "/field/exposure_in",
            json!(13),
            "rates.field.exposure_in: 13 is more than height_in, 12: mend one of the two",
        ),
        (
            "/field/exposure_in",
            json!("5"),
            "rates.field.exposure_in: write a number here, not the text \"5\"",
        ),
        (
            "/field/nails",
            json!(1e308),
            "rates.field.nails: 1e308 is out of range: write a number from 0 to 1000000",
        ),
        (
            "/field/anchor",
            json!("middle"),
            "rates.field.anchor: \"middle\" is none of its words: write \"left\" or \"right\"",
        ),
        (
            "/valley/kind",
            json!(3),
            "rates.valley.kind: write one of its words, in quotes here, not the number 3",
        ),
        (
            "/starter/rakes",
            json!("yes"),
            "rates.starter.rakes: write true or false here, not the text \"yes\"",
        ),
        (
            "/starter",
            json!([1]),
            "rates.starter: write a table with all its keys here, not a list",
        ),
        (
            "/edge_metal/lap_in",
            json!(120),
            "rates.edge_metal.lap_in: 120 leaves nothing of stick_ft, 10: mend one of the two",
        ),
        (
            "/tear_off/felt_psf",
            json!([0.2, 0.1, 0.3]),
            "rates.tear_off.felt_psf: 0.2 0.1 0.3 do not rise: write the least, the likeliest and the most",
        ),
        (
            "/tear_off/felt_psf",
            json!([0.2, 0.3]),
            "rates.tear_off.felt_psf: write a list of the least, the likeliest and the most here, not 2 places",
        ),
        (
            "/tear_off/layer_chance",
            json!([0.5, 0.25]),
            "rates.tear_off.layer_chance: the chances sum to 0.75: let them sum to 1",
        ),
        (
            "/labour/height",
            json!([]),
            "rates.labour.height: the list has 0 places: write 1 to 200",
        ),
        (
            "/price/profit_percent",
            json!("100"),
            "rates.price.profit_percent: a margin of 100 per cent of the price leaves nothing for the cost: write at most 99.99, or method \"markup\"",
        ),
        (
            "/price/tax_percent",
            json!("6,25"),
            "rates.price.tax_percent: \"6,25\" is no number of per cent: write digits with a point, such as 6.25",
        ),
        (
            "/price/trip",
            json!("99999999999"),
            "rates.price.trip: 99999999999 is too great an amount: write at most 100000000",
        ),
    ];
    for (pointer, value, sentence) in said {
        assert_eq!(rates_with(pointer, value), sentence, "{pointer}");
    }
}

#[test]
fn a_code_profile_wants_a_day() {
    let mut code = Code::demo().to_value();
    code["date"] = json!("last spring");
    assert_eq!(
        Code::read(&table(code)).unwrap_err().to_string(),
        "code.date: \"last spring\" is no day: write year, month and day as 2024-05-01"
    );
}

#[test]
fn one_key_is_changed_by_its_path_in_the_words_of_a_person() {
    let rates = Rates::demo();
    let price = |rates: &Rates| rates.field.price.map(Money::words);
    assert_eq!(
        price(&rates.with("field.price", " 40.00 ").unwrap()),
        Some("$40.00".into())
    );
    assert_eq!(price(&rates.with("field.price", "").unwrap()), None);
    assert_eq!(
        rates.with("field.pool", "none").unwrap().field.pool,
        Pool::None
    );
    assert!(rates.with("starter.rakes", "true").unwrap().starter.rakes);
    let boots = rates.with("boots.pipe.1.25", "7.10").unwrap().boots;
    assert_eq!(boots.pipe["1.25"], Some(Money::read("7.10").unwrap()));
    let steep = rates
        .with("labour.steepness", "[[0, 1], [8, 1.5]]")
        .unwrap();
    assert_eq!(
        steep.labor.steepness,
        [(0.0, 1.0), (8.0, 1.5)]
            .map(|(pitch, factor)| (Pitch::rise_in_12(pitch), Measure::new(factor)))
    );
    let brick = rates
        .with("tear_off.covering_psf.slate", "[7, 8, 10]")
        .unwrap();
    assert_eq!(
        brick.tear_off.covering_psf["slate"],
        [7.0, 8.0, 10.0].map(Measure::new)
    );
    assert_eq!(
        rates
            .with("labour.strip_deck.board", "1.2")
            .unwrap()
            .labor
            .strip_deck["board"],
        Measure::new(1.2)
    );
    assert_eq!(
        Code::demo().with("date", "2025-11-30").unwrap().day(),
        chrono_day(2025, 11, 30)
    );
}

fn chrono_day(year: i32, month: u32, day: u32) -> Option<chrono::NaiveDate> {
    chrono::NaiveDate::from_ymd_opt(year, month, day)
}

#[test]
fn a_change_that_cannot_be_is_refused_in_the_sentence_of_the_file() {
    let rates = Rates::demo();
    let said = |path: &str, text: &str| rates.with(path, text).unwrap_err().to_string();
    assert_eq!(
        said("field.exposure_in", "0"),
        "rates.field.exposure_in: 0 cannot be: write a number above 0"
    );
    assert_eq!(
        said("field.exposure_in", "five"),
        "rates.field.exposure_in: write a number here, not the text \"five\""
    );
    assert!(
        said("field.colour", "red").starts_with("rates.field.colour: the key is not known here")
    );
    assert!(said("colour", "red").starts_with("rates.colour: the key is not known here"));
    assert!(said("", "red").starts_with("rates.: the key is not known here"));
}

#[test]
fn a_blank_price_is_kept_where_a_firm_fills_its_rates_in() {
    let blank = Rates::demo().with("labour.hour_price", "").unwrap();
    assert_eq!(
        Rates::read(&table(blank.to_value()), Blanks::Kept),
        Ok(blank.clone())
    );
    assert_eq!(
        refusal(blank.to_value()),
        "rates.labour.hour_price: the price is missing: write money as text, such as \"34.50\""
    );
}

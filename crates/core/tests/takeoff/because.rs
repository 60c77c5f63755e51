//! From a total to its lines, from a line to faces, edges and rates, from there to readings.

use eavebook_core::price::{Part, PriceItem};
use eavebook_core::result::result;
use eavebook_core::settings::{Chosen, Code, Rates, Terms};
use eavebook_core::solve::{Priced, Solved, solve, take_off_and_price};
use eavebook_core::survey_file::{self, SurveyFile};
use eavebook_core::takeoff::{Cause, OrderItem};
use serde_json::Value;

pub fn demo_house() -> SurveyFile {
    let text = include_bytes!("../../../../assets/demo-house.json");
    survey_file::read(text).unwrap()
}

fn priced() -> (SurveyFile, Solved, Priced) {
    let file = demo_house();
    let solved = solve(&file.survey).unwrap();
    let priced = take_off_and_price(&file.survey, &solved, &file.terms(None)).unwrap();
    (file, solved, priced)
}

/// Whether something stands at a path of keys; a key may hold a point: `boots.pipe.1.5`.
fn stands(rates: &Value, path: &str) -> bool {
    let below = |(table, rest): (&str, &str)| rates.get(table).is_some_and(|t| stands(t, rest));
    rates.get(path).is_some() || path.split_once('.').is_some_and(below)
}

#[test]
fn every_line_and_every_figure_names_what_made_it() {
    let (_, solved, Priced { takeoff, price, .. }) = priced();
    let roof = solved.roof.unwrap();
    for line in &takeoff.order {
        assert!(!line.because.is_empty(), "{}", line.item);
        for cause in &line.because {
            match cause {
                Cause::Face(face) => assert!(*face < roof.faces.len()),
                Cause::Edge(edge) => assert!(*edge < roof.edges.len()),
                Cause::Rate(key) => {
                    assert!(stands(&Rates::demo().to_value(), key), "{key} is no rate");
                }
                Cause::Code(key) => assert!(
                    Code::demo()
                        .with(key, "x")
                        .unwrap_err()
                        .to_string()
                        .starts_with(&format!("code.{key}: write"))
                ),
                Cause::Penetration(_)
                | Cause::Covering
                | Cause::Deck
                | Cause::OrderLine(_)
                | Cause::PriceLine(_) => {}
            }
        }
    }
    for line in &price.lines {
        let rate = line
            .because
            .iter()
            .any(|cause| matches!(cause, Cause::Rate(_)));
        assert!(rate, "{}", line.item);
    }
    let lines = price
        .because
        .iter()
        .filter(|it| matches!(it, Cause::PriceLine(_)));
    assert_eq!(lines.count(), price.lines.len());
}

#[test]
fn a_line_of_the_price_leads_to_its_line_of_the_order_and_to_its_price() {
    let (_, _, Priced { takeoff, price, .. }) = priced();
    let boot = price
        .lines
        .iter()
        .find(|line| line.item.to_string() == "pipe boot 3 in")
        .unwrap();
    let [Cause::OrderLine(order), Cause::Rate(key)] = &boot.because[..] else {
        panic!("{:?}", boot.because)
    };
    assert_eq!(takeoff.order[*order].because, [Cause::Penetration(0)]);
    assert_eq!(key, "boots.pipe.3");
    assert_eq!(boot.part, Part::Materials);
    assert!(matches!(
        &boot.item,
        PriceItem::Ordered(OrderItem::Boot { .. })
    ));
}

#[test]
fn the_result_names_readings_slopes_and_keys_for_each_line() {
    let (file, solved, priced) = priced();
    let roof = solved.roof.as_ref().unwrap();
    let printed = result(&file.survey, &solved).with_price(&file.survey, roof, &priced);
    let printed: Value = serde_json::to_value(printed).unwrap();
    let because = |line: &str| -> Vec<&str> {
        let names = printed["because"][line].as_array().unwrap();
        names.iter().map(|it| it.as_str().unwrap()).collect()
    };
    let field = because("takeoff.order[0]");
    for name in [
        "leg 8",
        "leg 8 again",
        "tie 2-4",
        "pretend house leg 1 pitch",
        "rates.field.piece_in",
        "code.underlayment.least_pitch",
    ] {
        assert!(field.contains(&name), "{name} is not among {field:?}");
    }
    let lines = printed["price"]["lines"].as_array().unwrap().len();
    for line in 0..lines {
        assert!(!because(&format!("price.lines[{line}]")).is_empty());
    }
    assert!(because("price.total").contains(&"price.lines[0]"));
    assert!(because("price.total").contains(&"rates.price.profit_percent"));
}

#[test]
fn a_slip_that_nobody_notices_says_what_it_does_to_the_price() {
    let (file, solved, priced) = priced();
    let roof = solved.roof.as_ref().unwrap();
    let printed = result(&file.survey, &solved).with_price(&file.survey, roof, &priced);
    let printed: Value = serde_json::to_value(printed).unwrap();
    let told = &printed["bodies"][0]["reliability"][0];
    let moves = told["moves_area"].as_f64().unwrap();
    let price: f64 = told["moves_price"].as_str().unwrap().parse().unwrap();
    // From one end of the area's range to the other: 2 x 1.2816 standard deviations, normal tables.
    let sigma = solved.totals.area.unwrap().sigma.in_square_feet();
    let ends: f64 = (priced.price.high - priced.price.low)
        .as_decimal()
        .to_string()
        .parse()
        .unwrap();
    assert!((price - ends * moves / (2.0 * 1.2816 * sigma)).abs() < 0.01 * price);
    let words = told["words"].as_str().unwrap();
    assert!(words.contains(" sq ft and the price by up to $"), "{words}");
}

#[test]
fn the_demo_says_that_its_rates_are_invented() {
    let (.., priced) = priced();
    let codes: Vec<&str> = priced.takeoff.cautions.iter().map(|it| it.code()).collect();
    assert!(
        codes.contains(&"demo_rates") && codes.contains(&"demo_code") && codes.contains(&"loads")
    );
    let own = Terms {
        rates: Chosen::Own(Rates::demo()),
        ..Terms::demo()
    };
    let file = demo_house();
    let solved = solve(&file.survey).unwrap();
    let priced = take_off_and_price(&file.survey, &solved, &own).unwrap();
    assert!(
        !priced
            .takeoff
            .cautions
            .iter()
            .any(|it| it.code() == "demo_rates")
    );
}

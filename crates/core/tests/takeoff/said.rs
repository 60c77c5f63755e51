//! What is said beside the figures: cautions, what is not priced, what is not known.

use crate::because::demo_house;
use eavebook_core::price::Price;
use eavebook_core::settings::{Chosen, Rates, Terms};
use eavebook_core::solve::{Priced, solve, take_off_and_price};
use eavebook_core::survey::{Penetration, PenetrationKind, Place, Survey};
use eavebook_core::takeoff::{OrderItem, TakeoffCaution};
use eavebook_core::units::{Length, Money, Weight};

fn priced(survey: &Survey, terms: &Terms) -> Priced {
    let solved = solve(survey).unwrap();
    take_off_and_price(survey, &solved, terms).unwrap()
}

fn not_priced(price: &Price) -> Vec<String> {
    price.not_priced.iter().map(ToString::to_string).collect()
}

fn own(rates: Rates) -> Terms {
    Terms {
        rates: Chosen::Own(rates),
        ..Terms::demo()
    }
}

#[test]
fn an_old_code_profile_is_said_with_its_age_and_the_day_it_is_held_against() {
    let said = |on: &str| {
        let terms = Terms {
            on: Some(on.parse().unwrap()),
            ..Terms::demo()
        };
        let priced = priced(&demo_house().survey, &terms);
        let ages = priced
            .takeoff
            .cautions
            .iter()
            .filter(|it| it.code().contains("code_") || it.code() == "old_code");
        ages.map(ToString::to_string).collect::<Vec<_>>()
    };
    assert_eq!(said("2025-04-30"), Vec::<String>::new());
    assert_eq!(
        said("2026-11-25"),
        [
            "The code profile was read on 2024-05-01, 2 years and 6 months before 2026-11-25; rates of that age are as old. Ask the permit office which text is in force, and look at the prices again."
        ]
    );
    assert!(said("2025-05-01")[0].contains("1 year before 2025-05-01;"));
    assert_eq!(
        said("2024-04-30"),
        [
            "The code profile was read on 2024-05-01, after 2024-04-30: look which text was in force on that day."
        ]
    );
}

#[test]
fn a_blank_price_leaves_its_line_standing_and_named() {
    let survey = demo_house().survey;
    let whole = priced(&survey, &own(Rates::demo())).price;
    let blank = Rates::demo().with("field.price", "").unwrap();
    let priced = priced(&survey, &own(blank)).price;
    assert_eq!(priced.lines.len(), whole.lines.len());
    assert_eq!(
        (priced.lines[0].unit_price, priced.lines[0].amount),
        (None, None)
    );
    assert_eq!(
        priced.materials + whole.lines[0].amount.unwrap(),
        whole.materials
    );
    assert!(
        not_priced(&priced)
            .contains(&"field: its price is blank in the rates. Fill it in.".to_owned())
    );
    assert!(!not_priced(&whole).iter().any(|it| it.contains("blank")));
}

#[test]
fn a_blank_square_price_is_named_where_squares_are_billed() {
    let rates = Rates::demo()
        .with("price.billing", "net area")
        .and_then(|rates| rates.with("price.square_price", ""))
        .unwrap();
    let priced = priced(&demo_house().survey, &own(rates)).price;
    assert_eq!(
        not_priced(&priced)[0],
        "squares: the price of a square is blank in the rates, and squares are billed. Fill it in."
    );
    assert_eq!(priced.total, priced.allowances + priced.fixed);
}

#[test]
fn what_is_counted_without_a_line_is_named() {
    let mut survey = demo_house().survey;
    let at = survey.penetrations[0].at;
    survey.penetrations.extend([
        Penetration {
            kind: PenetrationKind::BoxVent,
            at,
        },
        Penetration {
            kind: PenetrationKind::BoxVent,
            at,
        },
        Penetration {
            kind: PenetrationKind::Dish,
            at,
        },
        Penetration {
            kind: PenetrationKind::Chimney {
                width: Length::feet(3.0),
                depth: Length::feet(2.0),
            },
            at,
        },
    ]);
    let named = not_priced(&priced(&survey, &own(Rates::demo())).price);
    for said in [
        "2 box vents, counted and without a line in the rates: price them.",
        "1 dish, counted and without a line in the rates: price it.",
        "a saddle behind a chimney over 30 in wide: price it.",
    ] {
        assert!(
            named.contains(&said.to_owned()),
            "{said} is not among {named:?}"
        );
    }
}

#[test]
fn layers_and_deck_that_nobody_saw_are_ranges_beside_the_roofs_own() {
    let mut survey = demo_house().survey;
    let known = priced(&survey, &own(Rates::demo())).price;
    assert!(known.unknowns.is_empty());
    assert!(known.low < known.total && known.total < known.high);
    survey.covering = None;
    survey.deck = None;
    let Priced { takeoff, price, .. } = priced(&survey, &own(Rates::demo()));
    let names: Vec<&str> = price.unknowns.iter().map(|it| it.name()).collect();
    assert_eq!(names, ["layers", "deck"]);
    for unknown in &price.unknowns {
        assert!(unknown.low < unknown.high, "{}", unknown.name());
        assert!(unknown.words().starts_with("nobody"));
    }
    assert!(takeoff.cautions.contains(&TakeoffCaution::LayersNotGiven));
    let [p10, p90] = [takeoff.tear_off.p10, takeoff.tear_off.p90].map(Weight::in_pounds);
    assert!(p90 - p10 > 3.0 * p10 / 10.0);
}

#[test]
fn an_opening_whose_place_on_the_face_is_not_known_is_cut_at_its_middle() {
    let mut survey = demo_house().survey;
    survey.penetrations.clear();
    let before = priced(&survey, &own(Rates::demo())).takeoff;
    let kind = PenetrationKind::Skylight {
        width: Length::feet(6.0),
        depth: Length::feet(6.0),
    };
    survey.penetrations.push(Penetration {
        kind,
        at: Place::FaceOf { body: 0, leg: 13 },
    });
    let after = priced(&survey, &own(Rates::demo())).takeoff;
    let cut = before.net_area.in_square_feet() - after.net_area.in_square_feet();
    assert!((cut - 36.0 * 1.118).abs() < 1.0, "{cut}");
    assert!(after.laid.new_pieces < before.laid.new_pieces);
    let step = |it: &eavebook_core::takeoff::Takeoff| {
        it.order
            .iter()
            .find(|line| line.item == OrderItem::StepFlashing)
            .map(|line| line.needed.amount())
    };
    assert_eq!(step(&before), None);
    // 6 ft up in plan, at 6 in 12, at 5 in, on both sides.
    assert_eq!(step(&after), Some(34.0));
    let solved = solve(&survey).unwrap();
    assert!(!solved.cautions.iter().any(|it| it.code() == "on_no_face"));
}

#[test]
fn money_is_whole_cents_everywhere() {
    let price = priced(&demo_house().survey, &own(Rates::demo())).price;
    let all = [
        price.materials,
        price.labor,
        price.tax,
        price.cost,
        price.profit,
        price.total,
        price.low,
        price.high,
    ];
    for money in all
        .into_iter()
        .chain(price.lines.iter().filter_map(|line| line.amount))
    {
        assert_eq!(money, money.to_cent());
        assert!(money > Money::ZERO);
    }
}

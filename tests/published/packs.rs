//! Pieces, packs, rolls, weights, loads and air of small roofs, taken off by the kernel.

use crate::advice::turning_point;
use crate::checks::{self, Check};
use crate::published;
use eavebook_core::price::price;
use eavebook_core::roof::{Edge, EdgeKind, Face, Roof};
use eavebook_core::settings::{Code, Rates};
use eavebook_core::survey::{Body, Covering, LegEdge, Point, Rise, Sketch, Survey};
use eavebook_core::takeoff::{OrderItem, OrderLine, Takeoff, take_off};
use eavebook_core::units::{Area, Length, Money, Pitch, Point3};

/// A house of equal rectangular slopes under the demo's rates and code profile, until told else.
struct House {
    slopes: usize,
    along: f64,
    up: f64,
    pitch: f64,
    overhang_in: f64,
    layers: u32,
    edges: Vec<(EdgeKind, f64)>,
    rates: Rates,
    code: Code,
}

fn house(slopes: usize, along: f64, up: f64) -> House {
    House {
        slopes,
        along,
        up,
        pitch: 6.0,
        overhang_in: 12.0,
        layers: 1,
        edges: Vec::new(),
        rates: Rates::demo(),
        code: Code::demo(),
    }
}

/// One slope of so many squares.
fn squares(squares: f64) -> House {
    house(1, 100.0, squares)
}

impl House {
    fn pitch(mut self, pitch: f64) -> House {
        self.pitch = pitch;
        self
    }

    fn rate(mut self, key: &str, text: &str) -> House {
        self.rates = self.rates.with(key, text).unwrap();
        self
    }

    fn code(mut self, key: &str, text: &str) -> House {
        self.code = self.code.with(key, text).unwrap();
        self
    }

    fn edge(mut self, kind: EdgeKind, length: f64) -> House {
        self.edges.push((kind, length));
        self
    }

    fn survey(&self) -> Survey {
        Survey {
            bodies: vec![Body {
                id: "main".to_owned(),
                eave_height: Length::feet(9.0),
                outline: Sketch::Known(vec![Point { x: 0.0, y: 0.0 }]),
                readings: Vec::new(),
                edges: vec![
                    LegEdge {
                        rise: Rise::Unknown,
                        overhang: Some(Length::inches(self.overhang_in)),
                    };
                    self.slopes
                ],
                placed_from: None,
            }],
            covering: Some(Covering {
                kind: None,
                layers: Some(self.layers),
            }),
            ..Survey::default()
        }
    }

    fn roof(&self) -> Roof {
        let pitch = Pitch::rise_in_12(self.pitch);
        let run = self.up / pitch.slope_factor();
        let top = 9.0 + run * self.pitch / 12.0;
        let face = |leg| Face {
            body: 0,
            leg,
            band: None,
            pitch,
            plan_area: Area::square_feet(self.along * run),
            area: Area::square_feet(self.along * self.up),
            polygon: [
                [0.0, 0.0, 9.0],
                [self.along, 0.0, 9.0],
                [self.along, run, top],
                [0.0, run, top],
            ]
            .map(Point3::feet)
            .to_vec(),
            holes: Vec::new(),
        };
        let edges = self.edges.iter().enumerate();
        Roof {
            faces: (0..self.slopes).map(face).collect(),
            edges: edges
                .map(|(index, (kind, length))| Edge {
                    kind: *kind,
                    length: Length::feet(*length),
                    from: Point3::feet([0.0, 0.0, 9.0]),
                    to: Point3::feet([*length, 0.0, 9.0]),
                    faces: vec![index % self.slopes],
                })
                .collect(),
            cautions: Vec::new(),
        }
    }

    fn taken(&self) -> Takeoff {
        take_off(
            &self.survey(),
            &self.roof(),
            Area::ZERO,
            &self.rates,
            &self.code,
        )
        .unwrap()
    }

    fn line(&self, item: &OrderItem) -> OrderLine {
        let order = self.taken().order;
        order.into_iter().find(|line| line.item == *item).unwrap()
    }

    fn packs(&self, item: &OrderItem) -> f64 {
        self.line(item).packs as f64
    }

    fn pieces(&self) -> f64 {
        self.line(&OrderItem::Field).needed.amount()
    }

    /// What the lines of one item cost.
    fn cost(&self, item: &str) -> f64 {
        let lines = price(&self.taken(), &self.rates).lines;
        let line = lines
            .iter()
            .find(|line| line.item.to_string() == item)
            .unwrap();
        dollars(line.amount.unwrap())
    }

    /// How far the ice barrier reaches up the slope.
    fn barrier_in(&self) -> f64 {
        self.taken().ice_barrier[0].up_slope.value()
    }
}

/// Limits and whole packs are held to within a hair that rounding of doubles cannot cross.
fn turns_at(from: f64, to: f64, says: impl Fn(f64) -> bool) -> f64 {
    (turning_point(from, to, says) * 1e3).round() / 1e3
}

fn dollars(money: Money) -> f64 {
    money.as_decimal().to_string().parse().unwrap()
}

fn eaves(house: House) -> House {
    let along = house.along;
    (0..house.slopes).fold(house, |house, _| house.edge(EdgeKind::Eave, along))
}

/// The textbook's house of two slopes, 45 by 20 ft, with its packs and prices; what it does not buy
/// costs nothing.
fn textbook(check: &Check) -> House {
    assert_eq!(check.input("squares").to_bits(), 18.0_f64.to_bits());
    let house = eaves(house(2, 45.0, 20.0))
        .code("ice_barrier.required", "false")
        .rate("field.per_pack", "20")
        .rate("field.margin_percent", "0")
        .rate("field.price", "14.00")
        .rate("underlayment.roll_sqft", "300")
        .rate("underlayment.price", "9.00")
        .rate("nails.per_lb", "240")
        .rate("nails.box_lb", "4")
        .rate("nails.price", "5.00")
        .rate("edge_metal.lap_in", "0")
        .rate("edge_metal.eave_price", "3.00")
        .rate("starter.price", "0");
    house.rate("deck.allowance_percent", "0")
}

/// A roof of felt rolls that hold so many squares.
fn felt(check: &Check, squares_a_roll: f64) -> f64 {
    house(2, check.input("length_ft"), check.input("rafter_ft"))
        .rate(
            "underlayment.roll_sqft",
            &(100.0 * squares_a_roll).to_string(),
        )
        .packs(&OrderItem::Underlayment)
}

/// Shingles that cover a square ten feet wide and high.
fn a_square(check: &Check) -> f64 {
    house(1, 10.0, 10.0)
        .rate("field.piece_in", &check.input("width_in").to_string())
        .rate("field.exposure_in", &check.input("exposure_in").to_string())
        .rate("field.stagger_in", "0")
        .pieces()
}

/// Strips that cover a square, of a roof that whole strips and courses cover.
fn strips_a_square(check: &Check) -> f64 {
    let (length, exposure) = (check.input("len_in"), check.input("exposure_in"));
    let house = house(1, 40.0 * length / 12.0, 48.0 * exposure / 12.0)
        .rate("field.piece_in", &length.to_string())
        .rate("field.exposure_in", &exposure.to_string())
        .rate("field.stagger_in", "0");
    house.pieces() / house.taken().net_area.in_squares()
}

/// The attic of a roof so flat that its slope is its plan, in square inches of opening.
fn attic(check: &Check, ratio: &str) -> f64 {
    let house = house(1, 100.0, check.input("attic_sqft") / 100.0).pitch(0.0);
    house
        .code("ventilation.ratio", ratio)
        .taken()
        .ventilation
        .required
        .value()
}

fn barrier(check: &Check) -> f64 {
    let mut house = eaves(house(1, 30.0, 20.0)).pitch(check.input("rise_in_per_12"));
    house.overhang_in = check.input("overhang_in");
    house.barrier_in()
}

/// Two layers of a covering whose weight a square is known, and felt.
fn torn_off(check: &Check) -> House {
    let exactly = |pounds_a_square: f64| format!("{:?}", [pounds_a_square / 100.0; 3]);
    let mut house = squares(check.input("squares"))
        .rate(
            "tear_off.covering_psf.other",
            &exactly(check.input("lb_layer")),
        )
        .rate("tear_off.felt_psf", &exactly(check.input("felt_lb")))
        .rate("tear_off.granule_loss_percent", "[0, 0, 0]")
        .rate("tear_off.wet_percent", "[0, 0, 0]");
    house.layers = check.input("layers") as u32;
    house
}

published! {
    felt_rolls_of_a_house_of_thirteen_squares = "WX-14", |check| {
        squares(check.input("area_sqft") / 100.0)
            .rate("underlayment.roll_sqft", &check.input("net_per_roll_sqft").to_string())
            .packs(&OrderItem::Underlayment)
    };
    bundles_of_the_textbook_house_and_their_cost = "WX-16", |check| {
        let square = check.input("bundles_per_square") * check.input("price");
        assert!((square - dollars(Money::read("56.00").unwrap())).abs() < 1e-9);
        eaves(house(2, 45.0, 20.0))
            .rate("field.per_pack", "20")
            .rate("field.margin_percent", "0")
            .rate("field.price", "14.00")
            .cost("field")
    };
    felt_of_the_textbook_house_and_its_cost = "WX-17", |check| {
        house(2, 45.0, 20.0)
            .rate("underlayment.roll_sqft", &(100.0 * check.input("sq_per_roll")).to_string())
            .rate("underlayment.price", &check.input("price").to_string())
            .cost("underlayment")
    };
    all_goods_of_the_textbook_house = "WX-18", |check| {
        let house = textbook(check);
        dollars(price(&house.taken(), &house.rates).materials)
    };
    light_felt_of_a_small_gable = "WX-19", |check| felt(check, 4.0);
    heavy_roofing_of_a_small_gable = "WX-20", |check| felt(check, 1.0);
    wood_shingles_with_waste = "WX-22", |check| {
        // 4 in wide at 5 in: 720 a square; 132 in a course and 132 courses are 24.2 squares.
        assert!((check.input("per_square") - 720.0).abs() < 1e-9);
        assert!((check.input("squares") - 24.2).abs() < 1e-9);
        house(1, 44.0, 55.0)
            .rate("field.piece_in", "4")
            .rate("field.stagger_in", "0")
            .rate("field.per_pack", "1")
            .rate("field.margin_percent", &(100.0 * check.input("waste")).to_string())
            .packs(&OrderItem::Field)
    };
    shingles_a_square_at_five_inches = "WX-23", a_square;
    shingles_a_square_at_four_inches = "WX-24", a_square;
    nothing_is_shingled_below_2_in_12 = "CD-01", |_| {
        turns_at(1.0, 3.0, |pitch| {
            house(1, 20.0, 20.0).pitch(pitch).taken().not_shingled.is_empty()
        })
    };
    an_ice_barrier_reaches_24_in_past_the_wall_line = "CD-03", |_| {
        let house = eaves(house(1, 30.0, 20.0)).pitch(4.0);
        house.barrier_in() / Pitch::rise_in_12(4.0).slope_factor() - house.overhang_in
    };
    from_8_in_12_an_ice_barrier_reaches_36_in_up_the_slope = "CD-04", |_| {
        turns_at(1.0, 12.0, |pitch| {
            let mut house = eaves(house(1, 30.0, 20.0)).pitch(pitch).code("ice_barrier.inside_in", "0");
            house.overhang_in = 1.0;
            house.barrier_in() > 35.0
        })
    };
    an_ice_barrier_at_4_in_12_and_an_overhang_of_12_in = "CD-06", barrier;
    an_ice_barrier_at_8_in_12_and_an_overhang_of_24_in = "CD-07", barrier;
    four_nails_a_strip = "CD-08", |_| {
        let house = squares(10.0);
        house.line(&OrderItem::Nails).needed.amount() * house.rates.nails.per_lb.value() / house.pieces()
    };
    edge_metal_laps_two_inches = "CD-13", |_| {
        let house = eaves(house(1, 30.0, 20.0));
        let line = house.line(&OrderItem::EaveEdgeMetal);
        12.0 * (house.rates.edge_metal.stick_ft.in_feet() - line.pack_size.amount())
    };
    air_for_an_attic_at_1_in_150 = "CD-18", |check| attic(check, "150");
    air_for_an_attic_at_1_in_300 = "CD-19", |check| attic(check, "300");
    two_layers_and_felt_weigh = "WT-18", |check| torn_off(check).taken().tear_off.mean.in_pounds();
    loads_at_what_a_trailer_carries = "WT-20", |check| {
        let payload = check.input("payload").to_string();
        let house = torn_off(&checks::find("WT-18")).rate("trailer.payload_lb", &payload);
        let tear_off = house.taken().tear_off;
        assert!((tear_off.mean.in_pounds() - check.input("lb")).abs() < 1e-6);
        tear_off.loads_by_payload as f64
    };
    strips_in_a_square = "PK-01", strips_a_square;
    metric_strips_in_a_square = "PK-03", strips_a_square;
    a_bundle_of_strips_caps_so_many_feet = "PK-10", |check| {
        let pack = (3.0 * check.input("strips")).to_string();
        turns_at(20.0, 50.0, |ridge| {
            let house = house(1, 30.0, 20.0).edge(EdgeKind::Ridge, ridge);
            house.rate("cap.per_pack", &pack).packs(&OrderItem::Cap) > 1.5
        })
    };
    step_flashing_of_a_wall_of_12_ft = "PK-11", |check| {
        house(1, 30.0, 20.0)
            .edge(EdgeKind::SideWall, check.input("slope_len_ft"))
            .rate("field.exposure_in", &check.input("exposure_in").to_string())
            .line(&OrderItem::StepFlashing)
            .needed
            .amount()
    };
    whole_bundles_after_waste = "WS-03", |check| {
        let per_pack = 80.0 / check.input("per");
        // 18.2 squares in whole strips: 1,456, at 80 a square.
        assert!((check.input("squares") - 18.2).abs() < 1e-9);
        house(1, 48.0, 455.0 / 12.0)
            .rate("field.stagger_in", "0")
            .rate("field.per_pack", &per_pack.to_string())
            .rate("field.margin_percent", &(100.0 * check.input("waste")).to_string())
            .packs(&OrderItem::Field)
    };
}

/// Entries that are no plain number, tested below.
pub const IN_PARTS: &[&str] = &["CD-05", "PK-09"];

#[test]
fn a_code_profile_without_the_steep_row_knows_no_such_rule() {
    let check = checks::find("CD-05");
    assert_eq!(check.expected.as_bool(), Some(false));
    let mut house = eaves(house(1, 30.0, 20.0))
        .pitch(12.0)
        .code("ice_barrier.steep_from_pitch", "0")
        .code("ice_barrier.inside_in", "0");
    house.overhang_in = 1.0;
    assert!(house.barrier_in() < 2.0, "{}", check.source);
}

#[test]
fn nails_a_square_at_four_and_six_a_strip() {
    let check = checks::find("PK-09");
    let nails = ["4", "6"].map(|nails| {
        // Ten strips a course and eight courses are a square.
        let house = house(1, 30.0, 10.0 / 3.0)
            .rate("field.stagger_in", "0")
            .rate("field.nails", nails);
        house.line(&OrderItem::Nails).needed.amount() * house.rates.nails.per_lb.value()
    });
    for (found, expected) in nails.iter().zip(check.expected.as_array().unwrap()) {
        assert!(
            (found - expected.as_f64().unwrap()).abs() < 1e-6,
            "{}",
            check.source
        );
    }
}

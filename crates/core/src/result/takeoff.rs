//! The takeoff of a result. The unit of a figure is in its key: `_in` inches, `_ft` feet, `_lb`
//! pounds, `_sqin` square inches, `_percent` per cent; areas without one are square feet.

use super::caution::CautionResult;
use crate::takeoff::{
    Billing, Courses, IceBarrier, LaborHours, Laid, LoadLimit, NotShingled, OrderItem, OrderLine,
    Pack, Takeoff, TearOff, Unit, Ventilation,
};
use serde::Serialize;

#[derive(Clone, Debug, Serialize)]
pub(super) struct TakeoffResult<'a> {
    net_area: f64,
    squares: f64,
    not_shingled: Vec<NotShingledResult<'a>>,
    courses: Vec<CoursesResult<'a>>,
    laid: LaidResult,
    order: Vec<OrderResult<'a>>,
    ice_barrier: Vec<IceBarrierResult<'a>>,
    tear_off: TearOffResult,
    ventilation: VentilationResult,
    labour: LaborResult,
    billing: BillingResult,
    deck_overlay: bool,
    cautions: Vec<CautionResult>,
}

#[derive(Clone, Debug, Serialize)]
struct NotShingledResult<'a> {
    body: &'a str,
    leg: usize,
    area: f64,
}

#[derive(Clone, Debug, Serialize)]
struct CoursesResult<'a> {
    body: &'a str,
    leg: usize,
    net_area: f64,
    courses: u64,
    run_ft: f64,
    pieces_laid: u64,
    new_pieces: u64,
    reused: u64,
    waste_percent: f64,
}

#[derive(Clone, Debug, Serialize)]
struct LaidResult {
    new_pieces: u64,
    valley_pieces: u64,
    pieces_laid: u64,
    reused: u64,
    waste_percent: f64,
    ordered_waste_percent: f64,
}

#[derive(Clone, Debug, Serialize)]
struct OrderResult<'a> {
    item: &'a OrderItem,
    needed: f64,
    unit: Unit,
    margin_percent: f64,
    pack_size: f64,
    pack: Pack,
    packs: u64,
    left_over: f64,
}

#[derive(Clone, Debug, Serialize)]
struct IceBarrierResult<'a> {
    body: &'a str,
    leg: usize,
    up_slope_in: f64,
    courses: u64,
    length_ft: f64,
}

#[derive(Clone, Debug, Serialize)]
struct TearOffResult {
    mean_lb: f64,
    sigma_lb: f64,
    p10_lb: f64,
    p50_lb: f64,
    p90_lb: f64,
    limit: LoadLimit,
    loads_p10: f64,
    loads_p50: f64,
    loads_p90: f64,
    loads_by_payload: u64,
    loads_by_volume: u64,
    loads: u64,
}

#[derive(Clone, Debug, Serialize)]
struct VentilationResult {
    plan_area: f64,
    ratio: f64,
    required_sqin: f64,
    upper_sqin: f64,
    lower_sqin: f64,
    ridge_vent_sqin: f64,
    upper_short_sqin: f64,
}

#[derive(Clone, Debug, Serialize)]
struct LaborResult {
    lay_hours: f64,
    strip_hours: f64,
}

#[derive(Clone, Debug, Serialize)]
struct BillingResult {
    net_squares: f64,
    accessory_squares: f64,
    ordered_squares: f64,
}

impl<'a> TakeoffResult<'a> {
    pub fn new(takeoff: &'a Takeoff) -> TakeoffResult<'a> {
        TakeoffResult {
            net_area: takeoff.net_area.in_square_feet(),
            squares: takeoff.net_area.in_squares(),
            not_shingled: takeoff.not_shingled.iter().map(not_shingled).collect(),
            courses: takeoff.courses.iter().map(courses).collect(),
            laid: laid(&takeoff.laid),
            order: takeoff.order.iter().map(order).collect(),
            ice_barrier: takeoff.ice_barrier.iter().map(ice_barrier).collect(),
            tear_off: tear_off(&takeoff.tear_off),
            ventilation: ventilation(&takeoff.ventilation),
            labour: labor(&takeoff.labor),
            billing: billing(&takeoff.billing),
            deck_overlay: takeoff.deck_overlay,
            cautions: takeoff
                .cautions
                .iter()
                .map(|caution| CautionResult {
                    code: caution.code(),
                    words: caution.to_string(),
                })
                .collect(),
        }
    }
}

fn not_shingled(face: &NotShingled) -> NotShingledResult<'_> {
    NotShingledResult {
        body: &face.body,
        leg: face.leg,
        area: face.area.in_square_feet(),
    }
}

fn courses(face: &Courses) -> CoursesResult<'_> {
    CoursesResult {
        body: &face.body,
        leg: face.leg,
        net_area: face.net_area.in_square_feet(),
        courses: face.courses,
        run_ft: face.run.in_feet(),
        pieces_laid: face.pieces_laid,
        new_pieces: face.new_pieces,
        reused: face.reused,
        waste_percent: face.waste.value(),
    }
}

fn laid(laid: &Laid) -> LaidResult {
    LaidResult {
        new_pieces: laid.new_pieces,
        valley_pieces: laid.valley_pieces,
        pieces_laid: laid.pieces_laid,
        reused: laid.reused,
        waste_percent: laid.waste.value(),
        ordered_waste_percent: laid.ordered_waste.value(),
    }
}

fn order(line: &OrderLine) -> OrderResult<'_> {
    OrderResult {
        item: &line.item,
        needed: line.needed.amount(),
        unit: line.needed.unit(),
        margin_percent: line.margin.value(),
        pack_size: line.pack_size.amount(),
        pack: line.pack,
        packs: line.packs,
        left_over: line.spare.amount(),
    }
}

fn ice_barrier(face: &IceBarrier) -> IceBarrierResult<'_> {
    IceBarrierResult {
        body: &face.body,
        leg: face.leg,
        up_slope_in: face.up_slope.value(),
        courses: face.courses,
        length_ft: face.length.in_feet(),
    }
}

fn tear_off(off: &TearOff) -> TearOffResult {
    TearOffResult {
        mean_lb: off.mean.in_pounds(),
        sigma_lb: off.sigma.in_pounds(),
        p10_lb: off.p10.in_pounds(),
        p50_lb: off.p50.in_pounds(),
        p90_lb: off.p90.in_pounds(),
        limit: off.limit,
        loads_p10: off.loads_p10.value(),
        loads_p50: off.loads_p50.value(),
        loads_p90: off.loads_p90.value(),
        loads_by_payload: off.loads_by_payload,
        loads_by_volume: off.loads_by_volume,
        loads: off.loads,
    }
}

fn ventilation(air: &Ventilation) -> VentilationResult {
    VentilationResult {
        plan_area: air.plan_area.in_square_feet(),
        ratio: air.ratio.value(),
        required_sqin: air.required.value(),
        upper_sqin: air.upper.value(),
        lower_sqin: air.lower.value(),
        ridge_vent_sqin: air.ridge_vent.value(),
        upper_short_sqin: air.upper_short.value(),
    }
}

fn labor(labor: &LaborHours) -> LaborResult {
    LaborResult {
        lay_hours: labor.lay_hours.value(),
        strip_hours: labor.strip_hours.value(),
    }
}

fn billing(billing: &Billing) -> BillingResult {
    BillingResult {
        net_squares: billing.net.in_squares(),
        accessory_squares: billing.net_and_accessories.in_squares(),
        ordered_squares: billing.ordered.in_squares(),
    }
}

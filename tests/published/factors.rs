//! Factors of a pitch.

use crate::checks::Check;
use crate::published;
use eavebook_core::units::{Angle, Area, Length, Pitch};

fn pitch(check: &Check) -> Pitch {
    Pitch::rise_in_12(check.input("rise_in_per_12"))
}

/// Inches of slope over a foot of run.
fn rafter_inches(check: &Check) -> f64 {
    (Length::feet(1.0) * pitch(check).slope_factor()).in_inches()
}

/// Inches of hip over a foot of common run.
fn hip_inches(check: &Check) -> f64 {
    (Length::feet(1.0) * pitch(check).hip_factor()).in_inches()
}

fn slope_factor(check: &Check) -> f64 {
    pitch(check).slope_factor()
}

fn hip_factor(check: &Check) -> f64 {
    pitch(check).hip_factor()
}

/// By how many per cent a slope of one degree more has more area: half a degree to either side.
fn per_cent_a_degree(check: &Check) -> f64 {
    let angle = pitch(check).angle().in_degrees();
    let factor = |degrees| Pitch::from_angle(Angle::degrees(degrees)).slope_factor();
    (factor(angle + 0.5) - factor(angle - 0.5)) / factor(angle) * 100.0
}

/// By how much the rise in 12 of 6 in 12 changes with one degree: half a degree to either side.
fn rise_a_degree(_: &Check) -> f64 {
    let angle = Pitch::rise_in_12(6.0).angle().in_degrees();
    let rise = |degrees| Pitch::from_angle(Angle::degrees(degrees)).in_12();
    rise(angle + 0.5) - rise(angle - 0.5)
}

published! {
    a_rafter_at_2_in_12 = "RT-02", rafter_inches;
    a_rafter_at_3_in_12 = "RT-03", rafter_inches;
    a_rafter_at_4_in_12 = "RT-04", rafter_inches;
    a_rafter_at_5_in_12 = "RT-05", rafter_inches;
    a_rafter_at_6_in_12 = "RT-06", rafter_inches;
    a_rafter_at_7_in_12 = "RT-07", rafter_inches;
    a_rafter_at_8_in_12 = "RT-08", rafter_inches;
    a_rafter_at_9_in_12 = "RT-09", rafter_inches;
    a_rafter_at_10_in_12 = "RT-10", rafter_inches;
    a_rafter_at_11_in_12 = "RT-11", rafter_inches;
    a_rafter_at_12_in_12 = "RT-12", rafter_inches;
    a_rafter_at_13_in_12 = "RT-13", rafter_inches;
    a_rafter_at_14_in_12 = "RT-14", rafter_inches;
    a_rafter_at_15_in_12 = "RT-15", rafter_inches;
    a_rafter_at_16_in_12 = "RT-16", rafter_inches;
    a_rafter_at_17_in_12 = "RT-17", rafter_inches;
    a_rafter_at_18_in_12 = "RT-18", rafter_inches;
    a_slope_at_1_in_12 = "SF-01", slope_factor;
    a_slope_at_24_in_12 = "SF-24", slope_factor;
    a_hip_at_1_in_12 = "HV-01", hip_factor;
    a_hip_at_2_in_12 = "HV-02", hip_factor;
    a_hip_at_3_in_12 = "HV-03", hip_factor;
    a_hip_at_4_in_12 = "HV-04", hip_factor;
    a_hip_at_5_in_12 = "HV-05", hip_factor;
    a_hip_at_6_in_12 = "HV-06", hip_factor;
    a_hip_at_7_in_12 = "HV-07", hip_factor;
    a_hip_at_8_in_12 = "HV-08", hip_factor;
    a_hip_at_9_in_12 = "HV-09", hip_factor;
    a_hip_at_10_in_12 = "HV-10", hip_factor;
    a_hip_at_11_in_12 = "HV-11", hip_factor;
    a_hip_at_12_in_12 = "HV-12", hip_factor;
    a_hip_at_14_in_12 = "HV-14", hip_factor;
    a_hip_at_16_in_12 = "HV-16", hip_factor;
    a_hip_at_18_in_12 = "HV-18", hip_factor;
    a_hip_at_20_in_12 = "HV-20", hip_factor;
    a_hip_at_24_in_12 = "HV-24", hip_factor;
    a_hip_in_inches_at_8_in_12 = "HVIN-08", hip_inches;
    a_hip_in_inches_at_9_in_12 = "HVIN-09", hip_inches;
    the_run_of_a_hip_is_a_hip_that_does_not_rise = "HVRUN", |check| {
        let run = Length::inches(check.input("common_run_in"));
        (run * Pitch::rise_in_12(0.0).hip_factor()).in_inches()
    };
    a_misprinted_hip_factor_at_7_in_12_is_not_taken_over = "TR-02", hip_factor;
    a_unit_of_slope_at_6_in_12 = "WX-09", rafter_inches;
    a_flat_area_at_6_in_12_on_the_slope = "WX-10", |check| {
        let plan = Area::square_feet(check.input("flat_area_sqft"));
        (plan * slope_factor(check)).in_square_feet()
    };
    a_square_is_a_hundred_square_feet = "SQ-01", |_| {
        let one = Area::square_feet(1.0);
        one.in_square_feet() / one.in_squares()
    };
    a_degree_of_area_at_4_in_12 = "IN-04d", per_cent_a_degree;
    a_degree_of_area_at_6_in_12 = "IN-06d", per_cent_a_degree;
    a_degree_of_area_at_8_in_12 = "IN-08d", per_cent_a_degree;
    a_degree_of_area_at_12_in_12 = "IN-12d", per_cent_a_degree;
    a_degree_of_rise_at_6_in_12 = "IN-06i", rise_a_degree;
}

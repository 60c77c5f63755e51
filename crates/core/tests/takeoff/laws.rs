//! What holds of every face and every price.

use crate::shapes::{counts, edge, face, laid, roof, survey};
use eavebook_core::price::price;
use eavebook_core::roof::EdgeKind;
use eavebook_core::settings::{Anchor, BillingBy, Code, Field, Pool, Rates};
use eavebook_core::takeoff::take_off;
use proptest::prelude::*;

/// Corners in the plane of a face: any quadrilateral on a level eave, dents not excluded.
fn corners() -> impl Strategy<Value = Vec<[f64; 2]>> {
    (
        2.0_f64..50.0,
        [-10.0_f64..20.0, 1.0_f64..40.0],
        1.0_f64..25.0,
        proptest::option::of((0.2_f64..0.8, 0.05_f64..0.6)),
    )
        .prop_map(|(eave, [left, ridge], height, dent)| {
            let mut corners = vec![[0.0, 0.0]];
            // Two valleys that meet in a dent of the lower side.
            if let Some((across, up)) = dent {
                corners.push([eave * across, up * height]);
            }
            corners.extend([[eave, 0.0], [left + ridge, height], [left, height]]);
            corners
        })
        .prop_filter("no crossing", |corners| {
            let [a, b] = [corners[0], corners[corners.len() - 1]];
            let across =
                |p: [f64; 2]| (b[0] - a[0]) * (p[1] - a[1]) - (b[1] - a[1]) * (p[0] - a[0]);
            let [c, d] = [corners[corners.len() - 3], corners[corners.len() - 2]];
            let other = |p: [f64; 2]| (d[0] - c[0]) * (p[1] - c[1]) - (d[1] - c[1]) * (p[0] - c[0]);
            corners[1..corners.len() - 1]
                .iter()
                .all(|p| across(*p) < -1e-3)
                && corners[..corners.len() - 3]
                    .iter()
                    .all(|p| other(*p) > 1e-3)
        })
}

fn with(change: impl Fn(&mut Field)) -> Rates {
    let mut rates = Rates::demo();
    change(&mut rates.field);
    rates
}

/// The most that pieces can overhang what they cover: a sliver a run.
fn slivers(laid: &eavebook_core::takeoff::Courses) -> f64 {
    // Two ends a run, runs at most two a course here; a piece is never stretched by more.
    laid.courses as f64 * 4.0 * 0.125 * 5.0 / 144.0
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(400))]

    #[test]
    fn waste_is_never_below_nothing_but_for_slivers(corners in corners()) {
        let laid = laid(face(0, 6.0, &corners, 0.0, [0.0, 0.0]), &Rates::demo());
        let net = laid.net_area.in_square_feet();
        prop_assert!(laid.waste.value() / 100.0 * net >= -slivers(&laid), "{:?}", laid);
    }

    #[test]
    fn without_a_pool_at_least_as_many_pieces_are_used(corners in corners()) {
        let pieces = |pool| {
            let rates = with(|field| field.pool = pool);
            laid(face(0, 6.0, &corners, 0.0, [0.0, 0.0]), &rates).new_pieces
        };
        prop_assert!(pieces(Pool::None) >= pieces(Pool::Face));
        prop_assert_eq!(pieces(Pool::Face), pieces(Pool::Roof));
    }

    #[test]
    fn turning_and_moving_a_face_keeps_its_counts(
        corners in corners(), turned in 0.0_f64..360.0, moved in [-80.0_f64..80.0, -80.0_f64..80.0],
    ) {
        let here = laid(face(0, 7.0, &corners, 0.0, [0.0, 0.0]), &Rates::demo());
        let there = laid(face(0, 7.0, &corners, turned, moved), &Rates::demo());
        prop_assert_eq!(counts(&there), counts(&here));
    }

    #[test]
    fn the_mirrored_face_with_the_other_anchor_has_the_same_counts(corners in corners()) {
        let mirrored: Vec<[f64; 2]> = corners.iter().rev().map(|[u, v]| [-u, *v]).collect();
        let left = laid(face(0, 6.0, &corners, 0.0, [0.0, 0.0]), &Rates::demo());
        let right = with(|field| field.anchor = Anchor::Right);
        let right = laid(face(0, 6.0, &mirrored, 0.0, [0.0, 0.0]), &right);
        prop_assert_eq!(counts(&right), counts(&left));
    }

    #[test]
    fn a_wide_rectangle_tends_to_the_waste_of_its_top_course(height in 3.0_f64..30.0) {
        let wide = [[0.0, 0.0], [3000.0, 0.0], [3000.0, height], [0.0, height]];
        let laid = laid(face(0, 6.0, &wide, 0.0, [0.0, 0.0]), &Rates::demo());
        let top = laid.courses as f64 * 5.0 / 12.0 / height - 1.0;
        prop_assert!((laid.waste.value() / 100.0 - top).abs() < 2e-3, "{}", laid.waste.value());
    }

    /// The larger the roof may be, the dearer its upper end and the cheaper its lower.
    #[test]
    fn a_larger_roof_never_costs_less(
        width in 10.0_f64..80.0,
        height in 5.0_f64..25.0,
        sigmas in proptest::collection::vec(0.0_f64..0.2, 2..8),
        billing in prop_oneof![
            Just(BillingBy::NetArea), Just(BillingBy::NetAndAccessories), Just(BillingBy::OrderedPacks)
        ],
    ) {
        let ring = [[0.0, 0.0], [width, 0.0], [width, height], [0.0, height]];
        let roof = roof(
            vec![face(0, 6.0, &ring, 0.0, [0.0, 0.0]), face(2, 8.0, &ring, 0.0, [0.0, 0.0])],
            vec![
                edge(EdgeKind::Eave, width, 0.0, &[0]),
                edge(EdgeKind::Ridge, width, 0.0, &[0, 1]),
                edge(EdgeKind::Hip, height, height / 2.0, &[0, 1]),
                edge(EdgeKind::Valley, height, height / 2.0, &[0, 1]),
                edge(EdgeKind::SideWall, height, height / 2.0, &[1]),
                edge(EdgeKind::Rake, height, height / 2.0, &[1]),
            ],
        );
        let mut rates = Rates::demo();
        rates.price.billing = billing;
        let mut sigmas = sigmas;
        sigmas.sort_by(f64::total_cmp);
        let mut last = None;
        for sigma in sigmas {
            let sigma = roof.area() * sigma;
            let takeoff = take_off(&survey(), &roof, sigma, &rates, &Code::demo()).unwrap();
            let price = price(&takeoff, &rates);
            prop_assert!(price.low <= price.total && price.total <= price.high);
            if let Some((low, high)) = last {
                prop_assert!(price.low <= low && high <= price.high);
            }
            last = Some((price.low, price.high));
        }
    }
}

//! Another way of counting, for faces without a dent: each course is the face clipped to its band,
//! each piece is placed and looked at alone, off-cuts lie in one heap and are searched through.

use crate::shapes::{counts, face, laid};
use eavebook_core::settings::{Anchor, Field, Pool, Rates};
use eavebook_core::units::Measure;
use proptest::prelude::*;

/// The part of a ring above (or below) a height (Sutherland and Hodgman 1974).
fn clipped(ring: &[[f64; 2]], height: f64, above: f64) -> Vec<[f64; 2]> {
    let mut part = Vec::new();
    for (a, b) in ring.iter().zip(ring.iter().cycle().skip(1)) {
        let [from, to] = [a, b].map(|place| above * (place[1] - height));
        if from >= 0.0 {
            part.push(*a);
        }
        if from * to < 0.0 {
            let share = from / (from - to);
            part.push([a[0] + (b[0] - a[0]) * share, height]);
        }
    }
    part
}

struct OffCut {
    length: i64,
    starts: bool,
}

/// Courses, pieces laid, new pieces, off-cuts used again.
fn by_hand(ring: &[[f64; 2]], field: &Field) -> (u64, u64, u64, u64) {
    let mil = |inches: f64| (1000.0 * inches + 0.5).floor() as i64;
    let sign = if field.anchor == Anchor::Right {
        -1.0
    } else {
        1.0
    };
    let ring: Vec<[f64; 2]> = ring
        .iter()
        .map(|[u, v]| [12.0 * u * sign, 12.0 * v])
        .collect();
    let least = |axis: usize| ring.iter().map(|p| p[axis]).fold(f64::INFINITY, f64::min);
    let top = ring.iter().map(|p| p[1]).fold(f64::NEG_INFINITY, f64::max);
    let (left, low) = (least(0), least(1));
    let (piece, exposure) = (mil(field.piece_in.value()), mil(field.exposure_in.value()));
    let mut heap: Vec<OffCut> = Vec::new();
    let (mut courses, mut pieces, mut new, mut reused) = (0, 0, 0, 0);
    while courses * exposure < mil(top - low) {
        let butt = low + courses as f64 * field.exposure_in.value();
        let head = (butt + field.height_in.value()).min(top);
        let band = clipped(&clipped(&ring, butt, 1.0), head, -1.0);
        let bond = courses % i64::from(field.steps) * mil(field.stagger_in.value()) % piece;
        courses += 1;
        let ends = |by: fn(f64, f64) -> f64, from: f64| band.iter().map(|p| p[0]).fold(from, by);
        let (from, to) = (
            ends(f64::min, f64::INFINITY),
            ends(f64::max, f64::NEG_INFINITY),
        );
        if band.len() < 3 || mil(to - left) - mil(from - left) < 125 {
            continue;
        }
        let (from, to) = (mil(from - left), mil(to - left));
        let mut joints: Vec<i64> = (0..)
            .map(|k| bond + (k - 1) * piece)
            .take_while(|joint| *joint <= to - 125)
            .filter(|joint| *joint >= from + 125)
            .collect();
        joints.insert(0, from);
        joints.push(to);
        for (place, pair) in joints.windows(2).enumerate() {
            pieces += 1;
            let need = (pair[1] - pair[0]).min(piece);
            let (first, last) = (place == 0, place + 2 == joints.len());
            if need == piece || !(first || last) {
                new += 1;
                continue;
            }
            let fits = |it: &OffCut| it.length >= need && (if it.starts { first } else { last });
            let best = heap
                .iter()
                .enumerate()
                .filter(|(_, it)| fits(it))
                .min_by_key(|(_, it)| (it.length, !it.starts))
                .map(|(index, _)| index);
            if let Some(best) = best {
                heap.remove(best);
                reused += 1;
                continue;
            }
            new += 1;
            if field.pool != Pool::None && piece - need >= mil(field.least_off_cut_in.value()) {
                heap.push(OffCut {
                    length: piece - need,
                    starts: last,
                });
            }
        }
    }
    (courses as u64, pieces, new, reused)
}

fn field() -> impl Strategy<Value = Field> {
    (
        prop_oneof![Just(36.0), Just(39.375), Just(40.0)],
        prop_oneof![Just(5.0), Just(5.625), Just(4.0)],
        prop_oneof![
            Just((18.0, 2_u32)),
            Just((6.0, 6)),
            Just((6.5, 6)),
            Just((0.0, 1))
        ],
        prop_oneof![Just(Anchor::Left), Just(Anchor::Right)],
        prop_oneof![Just(Pool::None), Just(Pool::Face), Just(Pool::Roof)],
        prop_oneof![Just(4.0), Just(8.0), Just(18.0)],
    )
        .prop_map(
            |(piece_in, exposure_in, (stagger_in, steps), anchor, pool, least_off_cut_in)| Field {
                piece_in: Measure::new(piece_in),
                exposure_in: Measure::new(exposure_in),
                stagger_in: Measure::new(stagger_in),
                steps,
                anchor,
                pool,
                least_off_cut_in: Measure::new(least_off_cut_in),
                ..Rates::demo().field
            },
        )
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(400))]
    #[test]
    fn tiny_faces_counted_by_hand_take_the_same_pieces(
        field in field(),
        bottom in 0.5_f64..30.0,
        top in [-6.0_f64..12.0, 0.0_f64..20.0],
        height in 0.4_f64..16.0,
    ) {
        let ring = [[0.0, 0.0], [bottom, 0.0], [top[0] + top[1], height], [top[0], height]];
        let rates = Rates { field: field.clone(), ..Rates::demo() };
        let ours = laid(face(0, 6.0, &ring, 0.0, [0.0, 0.0]), &rates);
        prop_assert_eq!(counts(&ours), by_hand(&ring, &field));
    }
}

#[test]
fn the_published_square_of_strips_is_eighty() {
    let wide = [
        [0.0, 0.0],
        [30.0, 0.0],
        [30.0, 10.0 / 3.0],
        [0.0, 10.0 / 3.0],
    ];
    assert_eq!(by_hand(&wide, &Rates::demo().field), (8, 84, 80, 4));
}

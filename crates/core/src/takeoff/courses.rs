//! Courses up a face, piece by piece (common practice: bond from a chalked line, off-cuts carried
//! on, the shadow of a course over the full height of its pieces).

use super::mils::{ceil_div, count, mil};
use super::off_cuts::{End, OffCuts};
use super::shadow::Region;
use crate::settings::{Anchor, Field, Pool};

/// No shorter piece is laid or left, mils: an eighth of an inch.
const SLIVER: i64 = 125;

/// What was laid on one face.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub(super) struct Laid {
    pub courses: u64,
    pub run_ft: f64,
    pub pieces_laid: u64,
    pub new_pieces: u64,
    pub reused: u64,
}

/// How pieces lie, in mils.
struct Bond {
    piece: i64,
    exposure: i64,
    stagger: i64,
    steps: i64,
    /// No shorter piece is laid or left.
    sliver: i64,
    /// Shortest off-cut that is kept; none: none is.
    least_off_cut: Option<i64>,
}

/// How many courses a face takes from its lowest point to its highest.
pub(super) fn courses_up(region: &Region, field: &Field) -> u64 {
    let [low, high] = region.extent(1);
    if low < high {
        count(mil(high - low), mil(field.exposure_in.value()))
    } else {
        0
    }
}

/// Lays one face; off-cuts are taken from the pool and left in it.
pub(super) fn lay(region: &Region, field: &Field, off_cuts: &mut OffCuts) -> Laid {
    lay_but_slivers(region, field, off_cuts, SLIVER)
}

fn lay_but_slivers(region: &Region, field: &Field, off_cuts: &mut OffCuts, sliver: i64) -> Laid {
    let mirrored;
    let region = match field.anchor {
        Anchor::Left => region,
        Anchor::Right => {
            mirrored = region.mirrored();
            &mirrored
        }
    };
    let bond = Bond {
        piece: mil(field.piece_in.value()),
        exposure: mil(field.exposure_in.value()),
        stagger: mil(field.stagger_in.value()),
        steps: i64::from(field.steps),
        sliver,
        least_off_cut: match field.pool {
            Pool::None => None,
            Pool::Face | Pool::Roof => Some(mil(field.least_off_cut_in.value())),
        },
    };
    let [left, _] = region.extent(0);
    let [low, high] = region.extent(1);
    let courses = courses_up(region, field);
    let mut laid = Laid {
        courses,
        ..Laid::default()
    };
    let mut run = 0;
    for course in 0..courses.cast_signed() {
        let butt = low + (course * bond.exposure) as f64 / 1000.0;
        let head = (butt + field.height_in.value()).min(high);
        let joint = (course % bond.steps) * bond.stagger % bond.piece;
        for [from, to] in region.shadow([butt, head]) {
            let (from, to) = (mil(from - left), mil(to - left));
            if to - from >= sliver {
                run += to - from;
                lay_run(&bond, joint, [from, to], off_cuts, &mut laid);
            }
        }
    }
    laid.run_ft = run as f64 / 12_000.0;
    laid
}

/// Lays one run of a course, cut at every joint of the bond that leaves no sliver.
fn lay_run(bond: &Bond, joint: i64, [from, to]: [i64; 2], off_cuts: &mut OffCuts, laid: &mut Laid) {
    let first = joint + bond.piece * ceil_div(from + bond.sliver - joint, bond.piece);
    let mut end_piece = |end: End, length: i64| {
        let length = length.min(bond.piece);
        laid.pieces_laid += 1;
        if length == bond.piece {
            laid.new_pieces += 1;
            return;
        }
        if off_cuts.take(end, length) {
            laid.reused += 1;
            return;
        }
        laid.new_pieces += 1;
        let left = bond.piece - length;
        if bond.least_off_cut.is_some_and(|least| left >= least) {
            off_cuts.keep_from(end, left);
        }
    };
    if first > to - bond.sliver {
        end_piece(End::Both, to - from);
        return;
    }
    let whole = (to - bond.sliver - first) / bond.piece;
    end_piece(End::Start, first - from);
    end_piece(End::Finish, to - first - whole * bond.piece);
    laid.pieces_laid += whole.unsigned_abs();
    laid.new_pieces += whole.unsigned_abs();
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::settings::Rates;
    use crate::units::Measure;
    use crate::units::measure::Inch;
    use proptest::prelude::*;

    /// A face on a level eave whose ends lean by whole eighths an inch, so that every place where a
    /// course ends is a whole mil; inches.
    fn face(width: i32, lean: [i32; 2], height: i32, scale: f64) -> Region {
        let [width, height] = [width, height].map(f64::from);
        let [left, right] = lean.map(|eighths| f64::from(eighths) * height / 8.0);
        let ring = [
            [0.0, 0.0],
            [width, 0.0],
            [width - right, height],
            [left, height],
        ];
        Region {
            rings: vec![
                ring.map(|place| place.map(|inches| inches * scale))
                    .to_vec(),
            ],
            cuts: Vec::new(),
        }
    }

    fn doubled(field: &Field) -> Field {
        let double = |inches: Measure<Inch>| Measure::new(2.0 * inches.value());
        Field {
            piece_in: double(field.piece_in),
            height_in: double(field.height_in),
            exposure_in: double(field.exposure_in),
            stagger_in: double(field.stagger_in),
            least_off_cut_in: double(field.least_off_cut_in),
            ..field.clone()
        }
    }

    proptest! {
        #[test]
        fn doubling_every_length_keeps_every_count(
            top in 1_i32..500, lean in [-6_i32..12, -6_i32..12], height in 5_i32..250,
        ) {
            let width = top + (lean[0] + lean[1]) * height / 8 + 1;
            prop_assume!(width > 0);
            let field = Rates::demo().field;
            let once = lay(&face(width, lean, height, 1.0), &field, &mut OffCuts::default());
            let twice = lay_but_slivers(
                &face(width, lean, height, 2.0),
                &doubled(&field),
                &mut OffCuts::default(),
                2 * SLIVER,
            );
            let counts = |laid: Laid| (laid.courses, laid.pieces_laid, laid.new_pieces, laid.reused);
            prop_assert!((twice.run_ft - 2.0 * once.run_ft).abs() < 1e-9);
            prop_assert_eq!(counts(twice), counts(once));
        }
    }

    #[test]
    fn a_piece_begun_at_the_left_end_can_only_finish_a_course() {
        let mut off_cuts = OffCuts::default();
        off_cuts.keep_from(End::Start, 18_000);
        assert!(!off_cuts.take(End::Start, 10_000));
        assert!(off_cuts.take(End::Finish, 10_000));
        assert!(!off_cuts.take(End::Finish, 1));
    }
}

//! A job worked out as one value, from its entries.

use eavebook_core::book::clock::Hlc;
use eavebook_core::book::entry::{Entry, Stamp};
use eavebook_core::book::fold::fold;
use eavebook_core::book::kinds::{
    Corner, Followed, HowRead, Kind, PitchBooked, PitchRead, RateSet, Reading, Side, TapeMarks,
    Thing, Turn,
};
use eavebook_core::book::lay_out::lay_out;
use eavebook_core::job::{JobBasis, JobError, SolvedJob};
use eavebook_core::settings::Terms;
use eavebook_core::settled::RoofUnavailable;
use eavebook_core::solve::{solve, take_off_and_price};
use std::sync::Arc;
use uuid::Uuid;

fn entries(kinds: &[Kind]) -> Vec<Entry> {
    let numbered = (1_u64..).zip(kinds);
    let entry = |(number, kind): (u64, &Kind)| {
        let stamp = Stamp {
            id: Uuid::from_u128((u128::from(number) << 80) | (7 << 76) | (2 << 62)),
            book: Uuid::nil(),
            device: Uuid::from_u128(1),
            incarnation: Uuid::from_u128(2),
            dseq: number,
            author: "me".to_owned(),
            hlc: Hlc::new(1_800_000_000_000 + number, 0),
            local_time: "2026-05-02T14:41:07-05:00".to_owned(),
        };
        Entry::new(stamp, kind, Vec::new())
    };
    numbered.map(entry).collect()
}

fn leg(leg: u32, text: &str) -> Kind {
    Kind::Reading(Reading {
        thing: Thing::Leg { leg },
        text: text.to_owned(),
        tape: TapeMarks::FeetInches,
        how: HowRead::Taped,
        followed: Followed::EaveEdge,
        blind: false,
    })
}

fn corner(after_leg: u32) -> Kind {
    Kind::Corner(Corner {
        after_leg,
        turn: Turn::Outside,
        building_on: Side::Right,
    })
}

/// A rectangle of 60 ft by 30 ft, walked with the building on the right.
fn rectangle() -> Vec<Kind> {
    let mut kinds: Vec<Kind> = (1..)
        .zip(["60'", "30'", "60'", "30'"])
        .map(|(n, text)| leg(n, text))
        .collect();
    kinds.extend((1..=3).map(corner));
    kinds
}

/// The rectangle under a hip roof at 6 in 12.
fn hip_roof() -> Vec<Kind> {
    let mut kinds = rectangle();
    kinds.extend((1..=4).map(|leg| {
        let read = PitchRead::Number { in_12: 6.0 };
        Kind::Pitch(PitchBooked { leg, read })
    }));
    kinds
}

fn basis() -> JobBasis {
    JobBasis {
        building_on: Side::Right,
        firm: Terms::demo(),
    }
}

fn job(kinds: &[Kind]) -> SolvedJob {
    SolvedJob::from_entries(&entries(kinds), basis())
}

#[test]
fn a_job_holds_the_same_figures_as_its_steps_one_by_one() {
    let job = job(&hip_roof());
    let laid = lay_out(&fold(&entries(&hip_roof())), Side::Right);
    let survey = laid.survey.expect("a closed walk");
    let solved = solve(&survey).expect("an outline");
    let priced = take_off_and_price(&survey, &solved, &Terms::demo()).expect("a roof");
    assert_eq!(job.survey(), Some(&survey));
    assert_eq!(job.solution().map(|all| &all.totals), Some(&solved.totals));
    assert_eq!(job.roof(), solved.roof.as_ref().ok());
    assert_eq!(job.priced, Ok(priced));
    assert_eq!(
        job.takeoff(),
        job.priced.as_ref().ok().map(|both| &both.takeoff)
    );
    assert!(job.standing().outline().is_some());
}

#[test]
fn an_open_walk_has_a_layout_and_no_solution() {
    let job = job(&[leg(1, "60'"), corner(1), leg(2, "30'")]);
    assert_eq!(job.laid.legs, 2);
    assert!(matches!(job.solved, Err(JobError::WalkOpen)));
    assert_eq!(job.priced, Err(JobError::WalkOpen));
    assert_eq!(job.price(), None);
}

#[test]
fn an_outline_without_pitches_is_solved_and_not_priced() {
    let job = job(&rectangle());
    assert!(
        job.solution()
            .is_some_and(|solved| solved.totals.plan_area.is_some())
    );
    let no_rise = JobError::Roof(RoofUnavailable::RiseUnknown {
        body: "main".to_owned(),
        leg: 0,
    });
    assert_eq!(job.priced, Err(no_rise));
    assert_eq!((job.roof(), job.price()), (None, None));
}

#[test]
fn a_rate_changed_for_one_job_moves_its_price_and_leaves_the_firms_rates() {
    let mut kinds = hip_roof();
    let plain = job(&kinds);
    for (key, value) in [("field.price", "134.50"), ("no.such.key", "1")] {
        kinds.push(Kind::Rate(RateSet {
            key: key.to_owned(),
            value: value.to_owned(),
        }));
    }
    let changed = job(&kinds);
    assert_eq!(changed.basis, plain.basis);
    let expected = plain.terms.rates.get().with("field.price", "134.50");
    assert_eq!(Ok(changed.terms.rates.get()), expected.as_ref());
    let total = |job: &SolvedJob| job.price().map(|price| price.total);
    assert!(total(&changed) > total(&plain) && total(&plain).is_some());
}

#[test]
fn a_job_is_current_for_the_same_fold_and_basis_only() {
    let folded = Arc::new(fold(&entries(&hip_roof())));
    let job = SolvedJob::new(Arc::clone(&folded), basis());
    assert!(job.is_current(&folded, &basis()));
    assert!(!job.is_current(&Arc::new((*folded).clone()), &basis()));
    let other_side = JobBasis {
        building_on: Side::Left,
        ..basis()
    };
    assert!(!job.is_current(&folded, &other_side));
}

#[test]
fn a_solved_job_can_be_shared_between_threads() {
    let job = Arc::new(job(&hip_roof()));
    let shared = Arc::clone(&job);
    let other = std::thread::spawn(move || shared.price().map(|price| price.total));
    assert_eq!(
        other.join().ok().flatten(),
        job.price().map(|price| price.total)
    );
}

//! One leg of a T typed with its two digits turned, as 42 for 24: who is named, over 500 houses.

use super::body::reading;
use eavebook_core::book::kinds::{Side, Turn};
use eavebook_core::outline::{ClosureState, LegLength, Tolerance, WalkedLeg, adjust, walk};
use eavebook_core::survey::{Body, Span};
use eavebook_core::units::Length;
use eavebook_houses::Noise;

const CORNERS: [Turn; 8] = [
    Turn::Outside,
    Turn::Inside,
    Turn::Outside,
    Turn::Outside,
    Turn::Outside,
    Turn::Outside,
    Turn::Inside,
    Turn::Outside,
];

/// A T walked from the front of its stem; feet. Whole feet: a tape laid on a house of whole feet.
fn tee(noise: &mut Noise) -> [f64; 8] {
    let mut feet = |low, high| noise.between(low, high).floor();
    let (stem, out) = (feet(14.0, 30.0), feet(8.0, 22.0));
    let (right, left, depth) = (feet(10.0, 30.0), feet(10.0, 30.0), feet(22.0, 38.0));
    [
        stem,
        out,
        right,
        depth,
        right + stem + left,
        depth,
        left,
        out,
    ]
}

/// To the inch, with what a careful tape misses by.
fn taped(truth: f64, noise: &mut Noise) -> f64 {
    ((truth + noise.normal(0.08)) * 12.0).round() / 12.0
}

/// The whole feet with their two digits turned; none where that is the same number.
fn turned(feet: f64) -> Option<f64> {
    let whole = feet.floor();
    let (tens, units) = ((whole / 10.0).floor() % 10.0, whole % 10.0);
    let other = feet + 9.0 * (units - tens);
    ((tens - units).abs() > 0.5 && whole >= 10.0 && other >= 2.0).then_some(other)
}

#[test]
fn a_leg_with_its_digits_turned_is_among_at_most_two_suspects() {
    let (mut seen, mut among_two, mut shown, mut in_set, mut seeds) = (0, 0, 0, 0, 0);
    for seed in 0.. {
        if seen == 500 {
            break;
        }
        seeds = seed + 1;
        let mut noise = Noise::seeded(9_000 + seed);
        let mut legs = tee(&mut noise).map(|truth| taped(truth, &mut noise));
        let culprit = (noise.share() * 8.0) as usize;
        let Some(typed) = turned(legs[culprit]) else {
            continue;
        };
        legs[culprit] = typed;
        let walked: Vec<WalkedLeg> = (0..8)
            .map(|leg| WalkedLeg {
                length: LegLength::Read(Length::feet(legs[leg])),
                turn: (leg < 7).then_some(CORNERS[leg]),
            })
            .collect();
        let walk = walk(&walked, Side::Right, &Tolerance::default());
        assert_eq!(
            walk.closure.state,
            ClosureState::Gap,
            "seed {seed}: {legs:?}"
        );
        seen += 1;
        let body = Body {
            id: "main".to_owned(),
            eave_height: Length::feet(9.0),
            outline: walk.sketch().expect("a walk that came round"),
            readings: (0..8)
                .map(|leg| reading(&format!("t{leg}"), Span::Leg(leg), legs[leg], None, None))
                .collect(),
            edges: Vec::new(),
            placed_from: None,
        };
        let outline = adjust(&body).expect("an outline");
        let named: Vec<usize> = outline.suspects.named.iter().map(|s| s.reading).collect();
        let holds = named.contains(&culprit);
        in_set += usize::from(holds);
        among_two += usize::from(holds && named.len() <= 2);
        shown += usize::from(named.iter().take(2).any(|r| *r == culprit));
    }
    println!(
        "{seen} turned legs in {seeds} houses: in the set {in_set}, in a set of at most two \
         {among_two}, among the two likeliest {shown}"
    );
    assert!(among_two * 10 >= seen * 9, "{among_two} of {seen}");
    assert!(shown * 10 >= seen * 9);
}

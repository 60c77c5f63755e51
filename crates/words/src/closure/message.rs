use crate::{Count, Noun};
use eavebook_core::book::kinds::Thing;
use eavebook_core::outline::{Checked, LastLeg, Miss, Sense, Side, SlipKind, Way};
use eavebook_core::units::Length;

messages! {
    /// Whether an outline closes, why it does not, and what to read.
    ClosureMessage, "closure";
    /// No leg is read.
    NoLegs;
    /// Corners are still to be walked: the way left to the start.
    ToClose {
        /// Along the first leg. `None` if a leg in that direction is not read.
        along: Option<Length>,
        /// Square to it. `None` as for `along`.
        across: Option<Length>,
    } = { along: Some(Length::feet(18.0)), across: Some(Length::feet(12.0)) },
        { along: Some(Length::feet(18.0)), across: None };
    /// Both misclosures are within tolerance.
    Closes {
        /// The misclosure, rounded up to whole inches.
        within: Length,
    } = { within: Length::inches(2.0) };
    /// The turns close, the legs do not.
    Gap {
        /// Misclosure along the front. `None` if it is within tolerance.
        along: Option<Miss>,
        /// Misclosure across the front. `None` as for `along`.
        across: Option<Miss>,
        /// Whether the last leg is known to be the last.
        last_leg: LastLeg,
    } = { along: Some(Miss { by: Length::feet(18.0), sense: Sense::Short }), across: None, last_leg: LastLeg::Known },
        { along: Some(Miss { by: Length::feet(2.0), sense: Sense::Short }),
          across: Some(Miss { by: Length::inches(19.0), sense: Sense::Long }), last_leg: LastLeg::Perhaps };
    /// Legs follow from the others, so the closure checks nothing.
    NotChecked {
        /// Legs worked out from the others.
        worked_out: Count,
    } = { worked_out: Count::new(1, Noun::Leg) }, { worked_out: Count::new(2, Noun::Leg) };
    /// Legs follow from the others, and the rest does not close.
    NotCheckedAndGap {
        /// Legs worked out from the others.
        worked_out: Count,
        /// Misclosure along the front. `None` if it is within tolerance or unknown.
        along: Option<Miss>,
        /// Misclosure across the front. `None` as for `along`.
        across: Option<Miss>,
    } = { worked_out: Count::new(1, Noun::Leg), along: Some(Miss { by: Length::feet(10.0), sense: Sense::Short }), across: None },
        { worked_out: Count::new(2, Noun::Leg), along: None, across: Some(Miss { by: Length::feet(10.0), sense: Sense::Long }) };
    /// One leg or two to read again; `or_another` if there are more suspects.
    ReadAgain {
        /// Likeliest first.
        things: Vec<Thing>,
        /// There are more suspects than these.
        or_another: bool,
    } = { things: vec![Thing::Leg { leg: 2 }], or_another: false },
        { things: vec![Thing::Leg { leg: 2 }, Thing::Leg { leg: 6 }], or_another: true };
    /// Turning two digits of one of these legs would close the gap.
    SwappedDigits {
        /// Legs, from 1.
        legs: Vec<u32>,
    } = { legs: vec![4] }, { legs: vec![4, 6] };
    /// The gap is as long as a leg.
    LegMissing {
        /// Legs of that length, from 1.
        as_long_as: Vec<u32>,
    } = { as_long_as: vec![4] }, { as_long_as: vec![2, 4] };
    /// The gap is twice a leg.
    TurnedWrongWay {
        /// Legs, from 1.
        legs: Vec<u32>,
    } = { legs: vec![3] }, { legs: vec![3, 5] };
    /// The gap is ten feet.
    DroppedTen;
    /// The gap is a full tape.
    FullTape {
        /// Length of the tape.
        length: Length,
    } = { length: Length::feet(100.0) };
    /// One of the legs along the gap is to be read again.
    ReadOneAlong {
        /// Legs, from 1.
        legs: Vec<u32>,
    } = { legs: vec![2] }, { legs: vec![1, 3] };
    /// A closure does not show the same slip on both legs of a pair.
    UnseenPair {
        /// Pairs of legs, from 1, the longest first.
        pairs: Vec<[u32; 2]>,
    } = { pairs: vec![[1, 3]] }, { pairs: vec![[1, 3], [2, 4]] }, { pairs: vec![[1, 3], [2, 4], [5, 7]] };
    /// A closure does not show a wrong unit or a stretched tape.
    UnseenTape;
    /// A closure does not show an overhang left out all round.
    UnseenOverhang;
    /// A closure does not show walls out of square.
    UnseenSquare;
    /// The likeliest slip in a suspect.
    Slip {
        /// Kind of slip.
        kind: SlipKind,
        /// Value without the slip. `None` while it is hidden from the person who reads again.
        likely: Option<Length>,
    } = { kind: SlipKind::Tens, likely: Some(Length::feet(62.0)) },
        { kind: SlipKind::OneFoot, likely: Some(Length::feet(41.0)) },
        { kind: SlipKind::Transposed, likely: Some(Length::feet(62.0)) },
        { kind: SlipKind::InchesForTenths, likely: None },
        { kind: SlipKind::Overhang, likely: Some(Length::feet(62.0)) },
        { kind: SlipKind::Reversed, likely: Some(Length::feet(38.0)) },
        { kind: SlipKind::Other, likely: None };
    /// No reading determines a length of the house.
    Lacking {
        /// Direction of the length.
        way: Way,
        /// Wing to which it belongs. `None` means the house as a whole.
        side: Option<Side>,
        /// Legs, from 1, that would determine it.
        legs: Vec<u32>,
        /// How many of them to read.
        readings: u32,
        /// Corners, from 1, of an overall that would determine it too.
        overall: Option<[u32; 2]>,
    } = { way: Way::Deep, side: None, legs: vec![2, 4], readings: 1, overall: None },
        { way: Way::Wide, side: Some(Side::Front), legs: vec![1, 3, 5, 7], readings: 2, overall: None },
        { way: Way::Deep, side: Some(Side::Back), legs: vec![4, 6], readings: 1, overall: Some([1, 5]) },
        { way: Way::Slanting, side: Some(Side::Left), legs: vec![2, 3], readings: 2, overall: None };
    /// Corners that are fixed to each other and to no other corner.
    Group {
        /// First and last corner, from 1.
        corners: [u32; 2],
        /// From the first to the last, along the first leg.
        along: Length,
        /// Square to it.
        across: Length,
    } = { corners: [5, 6], along: Length::feet(50.0), across: Length::ZERO };
    /// One corner that is fixed to no other corner.
    LooseCorner {
        /// The corner, from 1.
        corner: u32,
    } = { corner: 5 };
    /// How well the other readings check one reading.
    CheckedBy {
        /// The check.
        checked: Checked,
    } = { checked: Checked::Nothing }, { checked: Checked::Weakly }, { checked: Checked::Well };
}

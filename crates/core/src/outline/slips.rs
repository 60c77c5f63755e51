//! The slips that people make with a tape and a pencil, and what a reading would have been.

use crate::survey::Reading;
use crate::units::Length;

/// A kind of slip.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum SlipKind {
    /// A tens digit wrong.
    Tens,
    /// One foot more or less.
    OneFoot,
    /// Two digits turned.
    Transposed,
    /// Tenths booked as inches, or inches as tenths.
    InchesForTenths,
    /// One or both overhangs left out.
    Overhang,
    /// Tape read from its other end.
    Reversed,
    /// None of the known kinds.
    Other,
}

/// How often which slip is made. The figures are assumptions, not field data: nobody has published
/// how crews misread.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SlipPriors {
    /// Chance that one reading holds a slip.
    pub per_reading: f64,
    /// Share of a wrong tens digit among slips.
    pub tens: f64,
    /// Share of one foot more or less.
    pub one_foot: f64,
    /// Share of two digits turned.
    pub transposed: f64,
    /// Share of tenths booked as inches, or inches as tenths.
    pub inches_for_tenths: f64,
    /// Share of overhangs left out.
    pub overhang: f64,
    /// Share of a tape read from its other end.
    pub reversed: f64,
    /// Share of anything else.
    pub other: f64,
    /// One standard deviation of anything else.
    pub other_sigma: Length,
    /// Length of a tape marked in feet.
    pub tape_length: Length,
    /// Length of a tape marked in meters.
    pub metric_tape_length: Length,
    /// How rough the work on one house may be, as factors of the usual spread with their chances.
    /// Counts where no reading states a spread of its own.
    pub roughness: [(f64, f64); 3],
    /// Nobody is named while the chance that nothing is wrong is at least this.
    pub alarm_below: f64,
    /// Part of the remaining chance that the named readings must reach.
    pub named_share: f64,
}

impl Default for SlipPriors {
    fn default() -> SlipPriors {
        SlipPriors {
            per_reading: 0.03,
            tens: 0.25,
            one_foot: 0.20,
            transposed: 0.12,
            inches_for_tenths: 0.10,
            overhang: 0.18,
            reversed: 0.05,
            other: 0.10,
            other_sigma: Length::feet(3.0),
            tape_length: Length::feet(100.0),
            metric_tape_length: Length::meters(30.0),
            roughness: [(0.75, 0.25), (1.0, 0.5), (1.35, 0.25)],
            alarm_below: 0.5,
            named_share: 0.9,
        }
    }
}

impl SlipPriors {
    /// Share of a kind among slips.
    #[must_use]
    pub fn share(&self, kind: SlipKind) -> f64 {
        match kind {
            SlipKind::Tens => self.tens,
            SlipKind::OneFoot => self.one_foot,
            SlipKind::Transposed => self.transposed,
            SlipKind::InchesForTenths => self.inches_for_tenths,
            SlipKind::Overhang => self.overhang,
            SlipKind::Reversed => self.reversed,
            SlipKind::Other => self.other,
        }
    }
}

/// What a tape is marked in, as far as a reading tells.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Marks {
    /// Feet and inches.
    Inches,
    /// Feet and tenths.
    Tenths,
    /// Metres and centimetres.
    Meters,
}

/// What a reading would have been, had one kind of slip been made.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Candidate {
    pub kind: SlipKind,
    /// The value without the slip, feet.
    pub value: f64,
    /// Its part of the kind, all parts of one kind at most 1.
    pub part: f64,
}

/// Metres in a foot.
const METERS_IN_FOOT: f64 = 0.3048;
/// A value this near a mark of the tape stands on it, feet.
const ON_THE_MARK: f64 = 0.004;
/// Shorter than this nothing is taped as a leg, feet.
const SHORTEST: f64 = 2.0;
/// Longer than this nothing is taped, feet.
const LONGEST: f64 = 10_000.0;

/// The marks that one reading shows; none where it is whole feet or stands on no mark.
pub(crate) fn marks_of(reading: &Reading) -> Option<Marks> {
    if let Some(text) = &reading.text {
        let text = text.to_ascii_lowercase();
        if text.contains('m') {
            return Some(Marks::Meters);
        }
        if text.contains('"') || text.contains("in") || text.contains('/') {
            return Some(Marks::Inches);
        }
        if text.contains('.') {
            return Some(Marks::Tenths);
        }
    }
    let feet = reading.value.in_feet();
    let rest = feet - feet.floor();
    let on = |marks: f64| (rest * marks - (rest * marks).round()).abs() < ON_THE_MARK * marks;
    match (on(1.0) || on(2.0), on(12.0), on(10.0)) {
        (true, _, _) | (false, false, false) => None,
        (false, true, _) => Some(Marks::Inches),
        (false, false, true) => Some(Marks::Tenths),
    }
}

/// The marks of most readings; feet and inches where none tells.
pub(crate) fn usual_marks(readings: &[Reading]) -> Marks {
    let count = |marks: Marks| {
        readings
            .iter()
            .filter(|r| marks_of(r) == Some(marks))
            .count()
    };
    let (inches, tenths, meters) = (
        count(Marks::Inches),
        count(Marks::Tenths),
        count(Marks::Meters),
    );
    if meters > inches && meters > tenths {
        Marks::Meters
    } else if tenths > inches {
        Marks::Tenths
    } else {
        Marks::Inches
    }
}

/// Every value that a reading may have been before a known kind of slip.
///
/// `usual`: marks of the tape in use; `overhangs`: those of the legs before and after, where given.
pub(crate) fn candidates(
    reading: &Reading,
    usual: Marks,
    overhangs: [Option<f64>; 2],
    priors: &SlipPriors,
) -> Vec<Candidate> {
    let feet = reading.value.in_feet();
    let marks = marks_of(reading).unwrap_or(usual);
    let unit = match marks {
        Marks::Meters => 1.0 / METERS_IN_FOOT,
        Marks::Inches | Marks::Tenths => 1.0,
    };
    let said = feet / unit;
    let mut found = Vec::new();
    let mut add = |kind, values: &[(f64, f64)]| {
        for &(value, part) in values {
            if (SHORTEST..=LONGEST).contains(&value) && (value - feet).abs() > ON_THE_MARK {
                found.push(Candidate { kind, value, part });
            }
        }
    };
    add(
        SlipKind::Tens,
        &[(feet - 10.0 * unit, 0.5), (feet + 10.0 * unit, 0.5)],
    );
    add(SlipKind::OneFoot, &[(feet - unit, 0.5), (feet + unit, 0.5)]);
    let turned = digits_turned(said, marks);
    let part = 1.0 / turned.len().max(1) as f64;
    for value in turned {
        add(SlipKind::Transposed, &[(value * unit, part)]);
    }
    let other_marks = read_in_other_marks(feet, usual);
    let part = 1.0 / other_marks.len().max(1) as f64;
    for value in other_marks {
        add(SlipKind::InchesForTenths, &[(value, part)]);
    }
    if let [Some(before), Some(after)] = overhangs {
        add(
            SlipKind::Overhang,
            &[
                (feet + before + after, 0.6),
                (feet + before, 0.2),
                (feet + after, 0.2),
            ],
        );
    } else if let [Some(one), None] | [None, Some(one)] = overhangs {
        add(SlipKind::Overhang, &[(feet + one, 1.0)]);
    }
    let tape = match marks {
        Marks::Meters => priors.metric_tape_length,
        Marks::Inches | Marks::Tenths => priors.tape_length,
    }
    .in_feet();
    if feet < 0.92 * tape {
        add(SlipKind::Reversed, &[(tape - feet, 1.0)]);
    }
    found
}

/// The number with two neighbouring digits turned: tens and units of the whole, and units and
/// tenths (on a metric tape tenths and hundredths too) where the tape has tenths.
fn digits_turned(said: f64, marks: Marks) -> Vec<f64> {
    let turn = |value: f64, place: f64| {
        // `place` is the weight of the lower digit.
        let scaled = (value / place + 1e-6).floor();
        let (low, high) = (scaled % 10.0, (scaled / 10.0).floor() % 10.0);
        ((low - high).abs() > 0.5).then_some(value + place * 9.0 * (low - high))
    };
    let whole = if said >= 1.0 { turn(said, 1.0) } else { None };
    let on_tenths = (said * 10.0 - (said * 10.0).round()).abs() < 0.05;
    let parts = match marks {
        Marks::Inches => vec![],
        Marks::Tenths if on_tenths => vec![turn(said, 0.1)],
        Marks::Tenths => vec![],
        Marks::Meters => vec![turn(said, 0.1), turn(said, 0.01)],
    };
    std::iter::once(whole).chain(parts).flatten().collect()
}

/// What the tape showed, had its marks been booked as the other kind: `24.6` as 24 ft 6 in, or
/// 24 ft 7 in as `24.7`, 24 ft 10 in as `24.10`.
fn read_in_other_marks(feet: f64, usual: Marks) -> Vec<f64> {
    let whole = (feet + ON_THE_MARK).floor();
    let rest = feet - whole;
    let mark = |parts: f64| {
        let k = (rest * parts).round();
        ((1.0..10.0).contains(&k) && (rest - k / parts).abs() < ON_THE_MARK).then_some(k)
    };
    match usual {
        Marks::Meters => vec![],
        Marks::Tenths => mark(12.0).map(|k| whole + k / 10.0).into_iter().collect(),
        Marks::Inches => {
            let of_hundredths = [10.0, 11.0]
                .into_iter()
                .filter(|inches| (rest - inches / 100.0).abs() < ON_THE_MARK)
                .map(|inches| whole + inches / 12.0);
            mark(10.0)
                .map(|k| whole + k / 12.0)
                .into_iter()
                .chain(of_hundredths)
                .collect()
        }
    }
}

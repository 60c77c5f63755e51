//! A hybrid logical clock: wall time where that grows, a counter where it does not.
//!
//! It orders what is shown and nothing else: which entry is in force never depends on a clock.
//! Source: Kulkarni, Demirbas et al., Logical Physical Clocks (2014), with one change: a stamp from
//! far in the future is kept with its entry and does not drag this clock along.

use serde::{Deserialize, Serialize};
use std::fmt;
use std::str::FromStr;

/// Milliseconds since 1970 in 48 bits, then a counter in 16. Text: `ms.counter`.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Hlc(u64);

/// How far ahead of the wall clock a stamp from elsewhere may lie and still be followed.
pub const FOLLOWED_AHEAD_MS: u64 = 10 * 60 * 1000;

const LARGEST_MS: u64 = (1 << 48) - 1;

impl Hlc {
    /// The last stamp there is: the year 10889.
    pub const LAST: Hlc = Hlc(u64::MAX);

    /// A stamp from its parts; times past 48 bits are held at the last one.
    pub fn new(ms: u64, counter: u16) -> Hlc {
        Hlc(ms.min(LARGEST_MS) << 16 | u64::from(counter))
    }

    /// Milliseconds since 1970.
    pub fn ms(self) -> u64 {
        self.0 >> 16
    }

    /// Where it stands among stamps of one millisecond.
    pub fn counter(self) -> u16 {
        (self.0 & 0xffff) as u16
    }

    /// The next stamp of a device whose last one is this: later than it, whatever the wall clock
    /// says. A counter that is full runs over into the next millisecond.
    pub fn tick(self, wall_ms: u64) -> Hlc {
        Hlc::new(wall_ms, 0).max(Hlc(self.0.saturating_add(1)))
    }

    /// The last stamp of this device after an entry with the stamp `other` came in.
    pub fn meet(self, other: Hlc, wall_ms: u64) -> Met {
        if other.ms() > wall_ms.saturating_add(FOLLOWED_AHEAD_MS) {
            Met::Suspect
        } else {
            Met::Followed(self.max(other))
        }
    }
}

/// What a stamp from elsewhere did to the clock.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Met {
    /// The clock now stands here.
    Followed(Hlc),
    /// More than ten minutes ahead: its entry is kept and shown so, the clock stays.
    Suspect,
}

impl fmt::Display for Hlc {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}.{}", self.ms(), self.counter())
    }
}

/// A text that is no stamp.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
#[error("\"{0}\" is no stamp: write milliseconds since 1970, a point, a counter up to 65535")]
pub struct NoStamp(pub String);

impl FromStr for Hlc {
    type Err = NoStamp;

    fn from_str(text: &str) -> Result<Hlc, NoStamp> {
        let parsed = text.split_once('.').and_then(|(ms, counter)| {
            let ms: u64 = ms.parse().ok()?;
            let counter: u16 = counter.parse().ok()?;
            (ms <= LARGEST_MS).then(|| Hlc::new(ms, counter))
        });
        // One stamp has one text: no sign, no leading zero.
        parsed
            .filter(|hlc| hlc.to_string() == text)
            .ok_or_else(|| NoStamp(text.to_owned()))
    }
}

impl Serialize for Hlc {
    fn serialize<S: serde::Serializer>(&self, to: S) -> Result<S::Ok, S::Error> {
        to.collect_str(self)
    }
}

impl<'de> Deserialize<'de> for Hlc {
    fn deserialize<D: serde::Deserializer<'de>>(from: D) -> Result<Hlc, D::Error> {
        let text = String::deserialize(from)?;
        text.parse().map_err(serde::de::Error::custom)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    const TEN_YEARS: u64 = 10 * 365 * 24 * 3600 * 1000;
    const NOW: u64 = 1_800_000_000_000;

    #[test]
    fn a_clock_set_back_ten_years_still_stamps_later_than_before() {
        let last = Hlc::new(NOW, 7);
        assert_eq!(last.tick(NOW - TEN_YEARS), Hlc::new(NOW, 8));
    }

    #[test]
    fn a_full_counter_runs_over_into_the_next_millisecond() {
        assert_eq!(Hlc::new(NOW, u16::MAX).tick(NOW), Hlc::new(NOW + 1, 0));
    }

    #[test]
    fn a_stamp_ten_years_ahead_is_suspect_and_not_followed() {
        let mine = Hlc::new(NOW, 0);
        assert_eq!(mine.meet(Hlc::new(NOW + TEN_YEARS, 3), NOW), Met::Suspect);
        let soon = Hlc::new(NOW + FOLLOWED_AHEAD_MS, 3);
        assert_eq!(mine.meet(soon, NOW), Met::Followed(soon));
        assert_eq!(mine.meet(Hlc::new(5, 5), NOW), Met::Followed(mine));
    }

    #[test]
    fn what_is_no_stamp_is_refused_by_its_text() {
        for bad in [
            "",
            "5",
            "5.",
            ".5",
            "-5.1",
            "+5.1",
            "05.1",
            "5.65536",
            "281474976710656.0",
        ] {
            let said = bad.parse::<Hlc>().unwrap_err().to_string();
            assert!(said.starts_with(&format!("\"{bad}\" is no stamp: write milliseconds")));
        }
    }

    proptest! {
        #[test]
        fn text_and_back_is_the_same_stamp(ms in 0..=LARGEST_MS, counter: u16) {
            let hlc = Hlc::new(ms, counter);
            prop_assert_eq!(hlc.to_string().parse::<Hlc>(), Ok(hlc));
        }

        #[test]
        fn every_stamp_is_later_than_all_before_it(
            walls in prop::collection::vec(0..=LARGEST_MS / 2, 1..200),
        ) {
            let mut last = Hlc::default();
            for wall in walls {
                let next = last.tick(wall);
                prop_assert!(next > last && next.ms() >= wall);
                last = next;
            }
        }
    }
}

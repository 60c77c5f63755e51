//! Arguments that the samples of several areas share.

use crate::FaceName;
use chrono::{DateTime, FixedOffset};
use eavebook_core::book::house_side::HouseSide;
use eavebook_core::book::kinds::EndKind;

/// The second slope of the back.
pub const BACK_2: FaceName = FaceName {
    side: HouseSide::Back,
    end: EndKind::Sloped,
    number: Some(2),
    letter: None,
};

/// The gable of the front.
pub const FRONT_GABLE: FaceName = FaceName {
    side: HouseSide::Front,
    end: EndKind::Gable,
    number: None,
    letter: None,
};

/// A time of day with its offset.
pub fn local_time() -> Option<DateTime<FixedOffset>> {
    DateTime::parse_from_rfc3339("2026-05-02T14:01:00-05:00").ok()
}

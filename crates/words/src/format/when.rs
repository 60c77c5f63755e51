//! Times of day, apart from the names of months.

use chrono::{DateTime, FixedOffset, Timelike};

/// The hour on a twelve-hour clock, the minute, and whether it is after noon.
pub(super) fn twelve_hours(time: &DateTime<FixedOffset>) -> (u32, u32, bool) {
    let (afternoon, hour) = time.hour12();
    (hour, time.minute(), afternoon)
}

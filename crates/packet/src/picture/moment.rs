//! Moments as cameras write them: local, to the second, and now and then with what they lie ahead
//! of Greenwich.

use std::fmt;

/// A local date and time, to the second.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Moment {
    date: [i64; 3],
    time: [i64; 3],
}

impl Moment {
    /// Year, month, day and hours, minutes, seconds; none where there is no such moment.
    pub fn new(date: [i64; 3], time: [i64; 3]) -> Option<Moment> {
        let [year, month, day] = date;
        let [hours, minutes, seconds] = time;
        let leap = (year % 4 == 0 && year % 100 != 0) || year % 400 == 0;
        let longest = match month {
            4 | 6 | 9 | 11 => 30,
            2 if leap => 29,
            2 => 28,
            _ => 31,
        };
        let is_date = (1900..=9999).contains(&year)
            && (1..=12).contains(&month)
            && (1..=longest).contains(&day);
        let is_time =
            (0..24).contains(&hours) && (0..60).contains(&minutes) && (0..60).contains(&seconds);
        (is_date && is_time).then_some(Moment { date, time })
    }

    /// `2026:06:24 16:54:37`; zeros, blanks and days that never were are none.
    pub fn read(text: &str) -> Option<Moment> {
        let text = text.trim_end_matches(['\0', ' ']).trim_start();
        let (date, time) = text.split_once([' ', 'T'])?;
        Moment::new(three(date)?, three(time)?)
    }

    /// The date of a `2026:06:24`, where it is one.
    pub fn date(text: &str) -> Option<[i64; 3]> {
        three(text.trim_matches(['\0', ' ']))
    }

    /// Seconds since the first of March of the year 0 (Hinnant, *chrono-compatible low-level date
    /// algorithms*, from memory).
    fn seconds(self) -> i64 {
        let [year, month, day] = self.date;
        let (year, month) = match month {
            1 | 2 => (year - 1, month + 9),
            _ => (year, month - 3),
        };
        let (era, of_era) = (year.div_euclid(400), year.rem_euclid(400));
        let of_year = (153 * month + 2) / 5 + day - 1;
        let days = era * 146_097 + of_era * 365 + of_era / 4 - of_era / 100 + of_year;
        let [hours, minutes, seconds] = self.time;
        days * 86_400 + hours * 3600 + minutes * 60 + seconds
    }

    /// How far this local time lies ahead of the satellites' time of the same shot, to the nearest
    /// quarter hour; none where it lies more than 3 minutes from one, or no zone is that far.
    pub fn ahead_of(self, satellites: Moment) -> Option<Offset> {
        let apart = self.seconds() - satellites.seconds();
        let quarter = (apart + 450).div_euclid(900) * 900;
        if (apart - quarter).abs() > 180 {
            return None;
        }
        Offset::minutes(quarter / 60)
    }
}

fn three(text: &str) -> Option<[i64; 3]> {
    let mut parts = text.split([':', '-', '/']);
    let mut part = || {
        let digits = parts.next()?;
        let whole = digits.split('.').next()?;
        let fits = !whole.is_empty() && whole.bytes().all(|sign| sign.is_ascii_digit());
        fits.then(|| whole.parse().ok()).flatten()
    };
    Some([part()?, part()?, part()?])
}

impl fmt::Display for Moment {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let [year, month, day] = self.date;
        let [hours, minutes, seconds] = self.time;
        write!(
            f,
            "{year:04}-{month:02}-{day:02}T{hours:02}:{minutes:02}:{seconds:02}"
        )
    }
}

/// What a local time lies ahead of Greenwich.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Offset {
    minutes: i64,
}

impl Offset {
    /// By minutes, -12:00 to +14:00.
    pub fn minutes(minutes: i64) -> Option<Offset> {
        (-720..=840)
            .contains(&minutes)
            .then_some(Offset { minutes })
    }

    /// `-05:00`, `+05:45`, `Z`.
    pub fn read(text: &str) -> Option<Offset> {
        let text = text.trim_matches(['\0', ' ']);
        if text == "Z" {
            return Offset::minutes(0);
        }
        let sign = match text.chars().next()? {
            '+' => 1,
            '-' => -1,
            _ => return None,
        };
        let (hours, minutes) = text.get(1..)?.split_once(':')?;
        let number = |digits: &str| -> Option<i64> {
            let fits = digits.len() == 2 && digits.bytes().all(|sign| sign.is_ascii_digit());
            fits.then(|| digits.parse().ok()).flatten()
        };
        let (hours, minutes) = (number(hours)?, number(minutes)?);
        (minutes < 60)
            .then(|| Offset::minutes(sign * (hours * 60 + minutes)))
            .flatten()
    }
}

impl fmt::Display for Offset {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let sign = if self.minutes < 0 { '-' } else { '+' };
        let minutes = self.minutes.abs();
        write!(f, "{sign}{:02}:{:02}", minutes / 60, minutes % 60)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn zeros_blanks_and_days_that_never_were_are_no_moment() {
        for text in [
            "0000:00:00 00:00:00",
            "    :  :     :  :  ",
            "2026:02:29 10:00:00",
            "2026:13:01 10:00:00",
            "2026:06:24 24:00:00",
            "",
        ] {
            assert_eq!(Moment::read(text), None, "{text:?}");
        }
        let leap = Moment::read("2028:02:29 10:00:00\0").unwrap();
        assert_eq!(leap.to_string(), "2028-02-29T10:00:00");
    }

    #[test]
    fn the_satellites_tell_the_offset_across_midnight_and_to_the_quarter_hour() {
        let local = Moment::read("2026:03:08 22:15:04").unwrap();
        let there = |time| Moment::new([2026, 3, 9], time).unwrap();
        let said = |time| local.ahead_of(there(time)).map(|offset| offset.to_string());
        assert_eq!(said([3, 15, 0]).as_deref(), Some("-05:00"));
        assert_eq!(said([3, 17, 50]).as_deref(), Some("-05:00"));
        assert_eq!(said([3, 20, 0]), None);
        assert_eq!(said([3, 30, 4]).as_deref(), Some("-05:15"));
        assert_eq!(said([23, 15, 0]), None);
    }

    #[test]
    fn an_offset_is_read_in_whole_minutes_and_no_zone_is_past_its_bounds() {
        for (text, said) in [
            ("+05:45", Some("+05:45")),
            ("-05:00\0", Some("-05:00")),
            ("Z", Some("+00:00")),
            ("+14:15", None),
            ("5:00", None),
            ("+05:75", None),
            ("   :  ", None),
        ] {
            let read = Offset::read(text).map(|offset| offset.to_string());
            assert_eq!(read.as_deref(), said, "{text:?}");
        }
    }
}

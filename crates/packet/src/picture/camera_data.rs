//! What the camera wrote into a file (Exif 2.32).

use super::heif;
use super::kind::PictureKind;
use super::moment::{Moment, Offset};
use exif::{Exif, In, Tag, Value};
use std::io::Cursor;

/// What the camera wrote; each part none where it is not there or cannot be.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct CameraData {
    /// How the points lie, as stored: 1 to 8, and what else was written.
    pub orientation: Option<u32>,
    /// Local time of the shutter, `2026-06-24T16:54:37`.
    pub taken_local: Option<String>,
    /// What that lies ahead of Greenwich, `-05:00`.
    pub offset: Option<String>,
    /// Who says so.
    pub offset_from: Option<OffsetFrom>,
    /// Where.
    pub position: Option<Position>,
    /// Where the camera looked.
    pub direction: Option<Direction>,
    /// Focal length, as on a frame of 36 by 24 mm.
    pub focal_35mm: Option<u32>,
    /// Points across and down, as stored, where the file is nothing but this data.
    pub(super) size: Option<[u32; 2]>,
}

/// Who says how far the local time lies ahead of Greenwich.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum OffsetFrom {
    /// The file.
    File,
    /// The satellites, whose own time stands beside the local one.
    SatelliteTime,
}

impl OffsetFrom {
    /// In words.
    #[must_use]
    pub fn words(self) -> &'static str {
        match self {
            OffsetFrom::File => "file",
            OffsetFrom::SatelliteTime => "satellite time",
        }
    }
}

/// A place on earth.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Position {
    /// Degrees, north positive.
    pub latitude: f64,
    /// Degrees, east positive.
    pub longitude: f64,
    /// Metres above the sea.
    pub altitude: Option<f64>,
}

/// Where a camera looked.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Direction {
    /// Clockwise from north, 0 to below 360.
    pub degrees: f64,
    /// `T`: true north, `M`: magnetic; none: nobody said.
    pub reference: Option<char>,
}

impl CameraData {
    /// Reads what can be read; a fault in one part leaves the others.
    #[must_use]
    pub fn read(bytes: &[u8], kind: PictureKind) -> CameraData {
        let mut reader = exif::Reader::new();
        reader.continue_on_error(true);
        let read = if kind == PictureKind::Heic {
            let Some(block) = heif::camera_block(bytes) else {
                return CameraData::default();
            };
            reader.read_raw(block)
        } else {
            reader.read_from_container(&mut Cursor::new(bytes))
        };
        match read.or_else(|why| why.distill_partial_result(|_| ())) {
            Ok(exif) => CameraData::from_exif(&exif),
            Err(_) => CameraData::default(),
        }
    }

    fn from_exif(exif: &Exif) -> CameraData {
        let taken = text(exif, Tag::DateTimeOriginal).and_then(|text| Moment::read(&text));
        let said = text(exif, Tag::OffsetTimeOriginal).and_then(|text| Offset::read(&text));
        let (offset, offset_from) = match (taken, said) {
            (None, _) => (None, None),
            (Some(_), Some(said)) => (Some(said), Some(OffsetFrom::File)),
            (Some(taken), None) => {
                let offset = satellites(exif).and_then(|there| taken.ahead_of(there));
                (offset, offset.map(|_| OffsetFrom::SatelliteTime))
            }
        };
        CameraData {
            orientation: number(exif, Tag::Orientation),
            taken_local: taken.map(|taken| taken.to_string()),
            offset: offset.map(|offset| offset.to_string()),
            offset_from,
            position: position(exif),
            direction: direction(exif),
            focal_35mm: number(exif, Tag::FocalLengthIn35mmFilm).filter(|focal| *focal > 0),
            size: number(exif, Tag::ImageWidth)
                .zip(number(exif, Tag::ImageLength))
                .map(<[u32; 2]>::from),
        }
    }
}

fn number(exif: &Exif, tag: Tag) -> Option<u32> {
    exif.get_field(tag, In::PRIMARY)?.value.get_uint(0)
}

fn text(exif: &Exif, tag: Tag) -> Option<String> {
    let Value::Ascii(lines) = &exif.get_field(tag, In::PRIMARY)?.value else {
        return None;
    };
    let line = lines.first()?;
    Some(String::from_utf8_lossy(line).into_owned())
}

/// Fractions of a field, where each is a number.
fn fractions(exif: &Exif, tag: Tag) -> Option<Vec<f64>> {
    let value = &exif.get_field(tag, In::PRIMARY)?.value;
    let parts: Vec<f64> = if let Value::Rational(parts) = value {
        parts.iter().map(|part| part.to_f64()).collect()
    } else if let Value::SRational(parts) = value {
        parts.iter().map(|part| part.to_f64()).collect()
    } else {
        return None;
    };
    parts.iter().all(|part| part.is_finite()).then_some(parts)
}

fn satellites(exif: &Exif) -> Option<Moment> {
    let date = Moment::date(&text(exif, Tag::GPSDateStamp)?)?;
    let time = fractions(exif, Tag::GPSTimeStamp)?;
    let [hours, minutes, seconds] = time.get(..3)?.try_into().ok()?;
    // Bounded before they are cut to whole numbers.
    let whole = |part: f64| (0.0..60.0).contains(&part).then_some(part as i64);
    Moment::new(date, [whole(hours)?, whole(minutes)?, whole(seconds)?])
}

fn position(exif: &Exif) -> Option<Position> {
    let status = text(exif, Tag::GPSStatus);
    if status.is_some_and(|status| status.trim_start().starts_with('V')) {
        return None;
    }
    let degrees = |tag, refers, [ahead, behind]: [char; 2], most: f64| {
        let parts = fractions(exif, tag)?;
        let whole = parts.first()?;
        let part = |at: usize| parts.get(at).copied().unwrap_or(0.0);
        let degrees = whole + part(1) / 60.0 + part(2) / 3600.0;
        let sign = text(exif, refers)?.trim_start().chars().next()?;
        let degrees = if sign == ahead {
            degrees
        } else if sign == behind {
            -degrees
        } else {
            return None;
        };
        (degrees.abs() <= most).then_some(degrees)
    };
    let latitude = degrees(Tag::GPSLatitude, Tag::GPSLatitudeRef, ['N', 'S'], 90.0)?;
    let longitude = degrees(Tag::GPSLongitude, Tag::GPSLongitudeRef, ['E', 'W'], 180.0)?;
    // What a camera writes that knows no place.
    if latitude.abs().max(longitude.abs()) <= 0.0 {
        return None;
    }
    let below = exif
        .get_field(Tag::GPSAltitudeRef, In::PRIMARY)
        .is_some_and(|field| field.value.get_uint(0) == Some(1));
    let altitude = fractions(exif, Tag::GPSAltitude).and_then(|parts| parts.first().copied());
    Some(Position {
        latitude,
        longitude,
        altitude: altitude.map(|above| if below { -above } else { above }),
    })
}

fn direction(exif: &Exif) -> Option<Direction> {
    let degrees = *fractions(exif, Tag::GPSImgDirection)?.first()?;
    let reference = text(exif, Tag::GPSImgDirectionRef)
        .and_then(|text| text.trim_start().chars().next())
        .filter(|sign| matches!(sign, 'T' | 'M'));
    (0.0..360.0)
        .contains(&degrees)
        .then_some(Direction { degrees, reference })
}

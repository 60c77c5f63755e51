//! Sheet copies: what of a photo goes on a paper and to another person. Made from its points
//! alone, so that no camera data, name, place or trailing byte of the file goes along.

use exif::{In, Tag};
use fast_image_resize::images::Image;
use fast_image_resize::{FilterType, PixelType, ResizeAlg, ResizeOptions, Resizer};
use image::{DynamicImage, ImageReader, Limits, RgbImage, imageops};
use jpeg_encoder::{ColorType, Encoder};
use std::io::Cursor;

/// Long side of a copy, points.
const LONG_SIDE: u32 = 1600;
/// Quality of its JPEG.
const QUALITY: u8 = 80;
/// Photos with more points, or a longer side, are kept and not shown.
const MOST_POINTS: u64 = 100_000_000;
const LONGEST_SIDE: u32 = 32_768;
/// The most memory the points of one photo may take as they are decoded.
const MOST_MEMORY: u64 = 640 << 20;

/// A copy ready for a paper.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Sheet {
    /// JPEG without a segment that came from the photo.
    pub jpeg: Vec<u8>,
    /// Whether the photo was whole.
    pub whole: Whole,
}

/// Whether all of a photo is there.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Whole {
    /// All of it.
    Yes,
    /// Its end is missing.
    CutShort,
}

/// Why a photo has no copy.
#[derive(Clone, Copy, Debug, PartialEq, Eq, thiserror::Error)]
pub enum PhotoCopyError {
    /// Nothing in it.
    #[error("It holds nothing.")]
    Empty,
    /// A kind that is kept and not shown.
    #[error("It is kept. This version cannot show HEIC.")]
    Heic,
    /// None of the kinds that are shown.
    #[error("It is kept, but it is no JPEG, PNG or WebP.")]
    OtherKind,
    /// Too large.
    #[error("It is kept, but it has more points than can be shown.")]
    TooLarge,
    /// It does not decode.
    #[error("It is kept but cannot be shown.")]
    Broken,
}

/// The kinds that are shown.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Kind {
    Jpeg,
    Png,
    WebP,
}

/// Makes the sheet copy of a photo.
pub fn sheet(photo: &[u8]) -> Result<Sheet, PhotoCopyError> {
    let jpeg = encode(&upright(photo)?)?;
    let whole = if kind(photo)? == Kind::Jpeg && !has_end(photo) {
        Whole::CutShort
    } else {
        Whole::Yes
    };
    Ok(Sheet { jpeg, whole })
}

/// The points of a photo as it is looked at, reduced to a sheet copy's size.
pub(crate) fn upright(photo: &[u8]) -> Result<RgbImage, PhotoCopyError> {
    if kind(photo)? == Kind::WebP && !chunks_fit(photo) {
        return Err(PhotoCopyError::Broken);
    }
    Ok(turn(reduce(decode(photo)?)?, orientation(photo)))
}

/// How the name of an original ends, by its first bytes: a file's own name proves nothing.
pub fn extension(photo: &[u8]) -> &'static str {
    match kind(photo) {
        Ok(Kind::Jpeg) => "jpg",
        Ok(Kind::Png) => "png",
        Ok(Kind::WebP) => "webp",
        Err(PhotoCopyError::Heic) => "heic",
        Err(
            PhotoCopyError::Empty
            | PhotoCopyError::OtherKind
            | PhotoCopyError::TooLarge
            | PhotoCopyError::Broken,
        ) => "bin",
    }
}

fn kind(photo: &[u8]) -> Result<Kind, PhotoCopyError> {
    let brand = photo.get(8..12);
    if photo.is_empty() {
        Err(PhotoCopyError::Empty)
    } else if photo.starts_with(&[0xff, 0xd8, 0xff]) {
        Ok(Kind::Jpeg)
    } else if photo.starts_with(b"\x89PNG\r\n\x1a\n") {
        Ok(Kind::Png)
    } else if photo.starts_with(b"RIFF") && brand == Some(b"WEBP") {
        Ok(Kind::WebP)
    } else if photo.get(4..8) == Some(b"ftyp")
        && brand.is_some_and(|brand| {
            [
                b"heic", b"heix", b"hevc", b"heim", b"heis", b"mif1", b"msf1",
            ]
            .into_iter()
            .any(|known| known == brand)
        })
    {
        Err(PhotoCopyError::Heic)
    } else {
        Err(PhotoCopyError::OtherKind)
    }
}

/// Whether every chunk of a WebP ends within the file. Decoders set aside what a chunk claims.
fn chunks_fit(photo: &[u8]) -> bool {
    let mut at = 12_usize;
    while at < photo.len() {
        let Some(header) = photo.get(at..at + 8) else {
            // A last odd byte is padding, more is the head of a chunk cut off.
            return photo.len() - at <= 1;
        };
        let size = u32::from_le_bytes([header[4], header[5], header[6], header[7]]) as usize;
        let Some(end) = at.checked_add(8 + size) else {
            return false;
        };
        if end > photo.len() {
            return false;
        }
        at = end + size % 2;
    }
    true
}

fn open(photo: &[u8]) -> Result<ImageReader<Cursor<&[u8]>>, PhotoCopyError> {
    ImageReader::new(Cursor::new(photo))
        .with_guessed_format()
        .map_err(|_| PhotoCopyError::Broken)
}

/// Points across and down as they are stored, from the header alone.
pub(crate) fn stored_size(photo: &[u8]) -> Option<[u32; 2]> {
    if kind(photo) == Ok(Kind::WebP) && !chunks_fit(photo) {
        return canvas(photo);
    }
    let (width, height) = open(photo).ok()?.into_dimensions().ok()?;
    (width > 0 && height > 0).then_some([width, height])
}

/// The canvas that an extended WebP names (RFC 9649, section 2.7).
fn canvas(photo: &[u8]) -> Option<[u32; 2]> {
    let side = |at: usize| {
        let [low, middle, high] = photo.get(at..at + 3)?.try_into().ok()?;
        Some(u32::from_le_bytes([low, middle, high, 0]) + 1)
    };
    (photo.get(12..16) == Some(b"VP8X")).then_some([side(24)?, side(27)?])
}

/// Whether a picture of this size is decoded at all.
pub(crate) fn can_be_shown([width, height]: [u32; 2]) -> bool {
    width.max(height) <= LONGEST_SIDE && u64::from(width) * u64::from(height) <= MOST_POINTS
}

fn decode(photo: &[u8]) -> Result<RgbImage, PhotoCopyError> {
    let size = stored_size(photo).ok_or(PhotoCopyError::Broken)?;
    if !can_be_shown(size) {
        return Err(PhotoCopyError::TooLarge);
    }
    let mut reader = open(photo)?;
    let mut limits = Limits::default();
    limits.max_image_width = Some(LONGEST_SIDE);
    limits.max_image_height = Some(LONGEST_SIDE);
    limits.max_alloc = Some(MOST_MEMORY);
    reader.limits(limits);
    let decoded = reader.decode().map_err(|_| PhotoCopyError::Broken)?;
    Ok(on_white(decoded))
}

/// Paper is white: what a photo lets through shows that.
fn on_white(decoded: DynamicImage) -> RgbImage {
    if !decoded.color().has_alpha() {
        return decoded.into_rgb8();
    }
    let clear = decoded.into_rgba8();
    RgbImage::from_fn(clear.width(), clear.height(), |x, y| {
        let [red, green, blue, alpha] = clear.get_pixel(x, y).0;
        let over = |part: u8| {
            let (part, alpha) = (u32::from(part), u32::from(alpha));
            ((part * alpha + 255 * (255 - alpha) + 127) / 255) as u8
        };
        image::Rgb([over(red), over(green), over(blue)])
    })
}

fn reduce(points: RgbImage) -> Result<RgbImage, PhotoCopyError> {
    let (width, height) = points.dimensions();
    let long = width.max(height);
    if long <= LONG_SIDE {
        return Ok(points);
    }
    let scaled = |side: u32| {
        let side = u64::from(side) * u64::from(LONG_SIDE) + u64::from(long) / 2;
        u32::try_from(side / u64::from(long)).unwrap_or(1).max(1)
    };
    let (to_width, to_height) = (scaled(width), scaled(height));
    let from = Image::from_vec_u8(width, height, points.into_raw(), PixelType::U8x3)
        .map_err(|_| PhotoCopyError::Broken)?;
    let mut to = Image::new(to_width, to_height, PixelType::U8x3);
    let options = ResizeOptions::new().resize_alg(ResizeAlg::Convolution(FilterType::Lanczos3));
    Resizer::new()
        .resize(&from, &mut to, &options)
        .map_err(|_| PhotoCopyError::Broken)?;
    RgbImage::from_raw(to_width, to_height, to.into_vec()).ok_or(PhotoCopyError::Broken)
}

/// Orientation 1 to 8 as stored (Exif 2.32, tag 0x0112); 1 where there is none or another number.
fn orientation(photo: &[u8]) -> u32 {
    let mut reader = exif::Reader::new();
    reader.continue_on_error(true);
    let read = reader
        .read_from_container(&mut Cursor::new(photo))
        .or_else(|why| why.distill_partial_result(|_| ()));
    let stored = read.ok().and_then(|data| {
        let field = data.get_field(Tag::Orientation, In::PRIMARY)?;
        field.value.get_uint(0)
    });
    stored
        .filter(|stored| (1..=8).contains(stored))
        .unwrap_or(1)
}

/// Upright from stored.
fn turn(points: RgbImage, orientation: u32) -> RgbImage {
    match orientation {
        2 => imageops::flip_horizontal(&points),
        3 => imageops::rotate180(&points),
        4 => imageops::flip_vertical(&points),
        5 => imageops::flip_horizontal(&imageops::rotate90(&points)),
        6 => imageops::rotate90(&points),
        7 => imageops::flip_horizontal(&imageops::rotate270(&points)),
        8 => imageops::rotate270(&points),
        _ => points,
    }
}

fn encode(points: &RgbImage) -> Result<Vec<u8>, PhotoCopyError> {
    let side = |side: u32| u16::try_from(side).map_err(|_| PhotoCopyError::TooLarge);
    let (width, height) = (side(points.width())?, side(points.height())?);
    let mut jpeg = Vec::new();
    Encoder::new(&mut jpeg, QUALITY)
        .encode(points.as_raw(), width, height, ColorType::Rgb)
        .map_err(|_| PhotoCopyError::Broken)?;
    Ok(jpeg)
}

/// Whether a JPEG runs to its end mark. Decoders pass over a missing one in silence; an end mark
/// within a small picture in the camera data does not count.
fn has_end(photo: &[u8]) -> bool {
    let mut at = 2;
    loop {
        // Fill bytes may stand before a mark.
        while photo.get(at) == Some(&0xff) && photo.get(at + 1) == Some(&0xff) {
            at += 1;
        }
        let (Some(0xff), Some(&mark)) = (photo.get(at), photo.get(at + 1)) else {
            return false;
        };
        at += 2;
        match mark {
            0xd9 => return true,
            0x01 | 0xd0..=0xd8 => continue,
            _ => {}
        }
        let Some(length) = photo.get(at..at + 2) else {
            return false;
        };
        at += usize::from(u16::from_be_bytes([length[0], length[1]]));
        if mark == 0xda {
            // Points of a scan: to the next mark that is neither a stuffed byte nor a restart.
            let ends = |pair: &[u8]| pair[0] == 0xff && !matches!(pair[1], 0 | 0xd0..=0xd7 | 0xff);
            let rest = photo.get(at..).unwrap_or_default();
            match rest.windows(2).position(ends) {
                Some(further) => at += further,
                None => return false,
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// A picture whose four corners are red, green, blue and grey, as JPEG.
    fn corners(width: u32, height: u32) -> Vec<u8> {
        let points = RgbImage::from_fn(width, height, |x, y| {
            image::Rgb(match (x < width / 2, y < height / 2) {
                (true, true) => [200, 30, 30],
                (false, true) => [30, 200, 30],
                (true, false) => [30, 30, 200],
                (false, false) => [120, 120, 120],
            })
        });
        encode(&points).unwrap()
    }

    /// Camera data with an orientation and words that are nobody's business, put into a JPEG.
    fn with_tags(jpeg: &[u8], orientation: u16, words: &str) -> Vec<u8> {
        let mut tiff = b"MM\0\x2a\0\0\0\x08\0\x02".to_vec();
        let text_at = 8 + 2 + 2 * 12 + 4;
        let mut field = |tag: u16, kind: u16, count: u32, value: [u8; 4]| {
            tiff.extend(tag.to_be_bytes());
            tiff.extend(kind.to_be_bytes());
            tiff.extend(count.to_be_bytes());
            tiff.extend(value);
        };
        let [high, low] = orientation.to_be_bytes();
        field(0x0112, 3, 1, [high, low, 0, 0]);
        let count = u32::try_from(words.len() + 1).unwrap();
        field(0x013b, 2, count, u32::to_be_bytes(text_at));
        tiff.extend([0; 4]);
        tiff.extend(words.as_bytes());
        tiff.push(0);
        let mut segment = b"Exif\0\0".to_vec();
        segment.extend(tiff);
        let length = u16::try_from(segment.len() + 2).unwrap();
        let mut photo = jpeg[..2].to_vec();
        photo.extend([0xff, 0xe1]);
        photo.extend(length.to_be_bytes());
        photo.extend(segment);
        photo.extend(&jpeg[2..]);
        photo
    }

    fn shown(sheet: &Sheet) -> RgbImage {
        image::load_from_memory(&sheet.jpeg).unwrap().into_rgb8()
    }

    /// The colour some quarters of the way across and down, as a letter.
    fn letter(points: &RgbImage, [across, down]: [u32; 2]) -> char {
        let x = points.width() * across / 4;
        let y = points.height() * down / 4;
        let [red, green, blue] = points.get_pixel(x, y).0;
        match (red > 160, green > 160, blue > 160) {
            (true, false, false) => 'r',
            (false, true, false) => 'g',
            (false, false, true) => 'b',
            _ => '-',
        }
    }

    #[test]
    fn all_eight_orientations_come_out_upright() {
        // Top left, top right, bottom left, bottom right after turning (Exif 2.32, figure of 0x0112).
        let upright = [
            "rgb-", "gr-b", "-bgr", "b-rg", "rbg-", "br-g", "-gbr", "g-rb",
        ];
        for (place, wanted) in upright.iter().enumerate() {
            let orientation = u16::try_from(place + 1).unwrap();
            let photo = with_tags(&corners(64, 32), orientation, "me");
            let points = shown(&sheet(&photo).unwrap());
            let seen: String = [[1, 1], [3, 1], [1, 3], [3, 3]]
                .map(|quarters| letter(&points, quarters))
                .into_iter()
                .collect();
            assert_eq!(seen, *wanted, "orientation {orientation}");
            let tall = orientation > 4;
            assert_eq!(points.dimensions(), if tall { (32, 64) } else { (64, 32) });
        }
    }

    #[test]
    fn a_copy_carries_no_word_of_the_camera_and_no_trailing_byte() {
        let mut photo = with_tags(&corners(64, 32), 1, "NAME OF A PERSON");
        photo.extend(b"AFTER THE END");
        let copy = sheet(&photo).unwrap();
        let holds = |bytes: &[u8], word: &[u8]| bytes.windows(word.len()).any(|at| at == word);
        assert!(holds(&photo, b"NAME OF A PERSON") && holds(&photo, b"AFTER THE END"));
        assert!(!holds(&copy.jpeg, b"NAME OF") && !holds(&copy.jpeg, b"AFTER THE"));
        assert!(!holds(&copy.jpeg, b"Exif") && copy.whole == Whole::Yes);
        assert_eq!(&copy.jpeg[copy.jpeg.len() - 2..], [0xff, 0xd9]);
    }

    #[test]
    fn a_large_photo_is_reduced_to_1600_points_and_a_small_one_left() {
        assert_eq!(
            shown(&sheet(&corners(2400, 1600)).unwrap()).dimensions(),
            (1600, 1067)
        );
        assert_eq!(
            shown(&sheet(&corners(1600, 20)).unwrap()).dimensions(),
            (1600, 20)
        );
        assert_eq!(
            shown(&sheet(&corners(30, 20)).unwrap()).dimensions(),
            (30, 20)
        );
    }

    #[test]
    fn a_photo_cut_short_is_known_by_its_missing_end_even_with_a_small_picture_inside() {
        let photo = with_tags(&corners(640, 480), 1, "\u{ff}\u{d9}");
        assert_eq!(sheet(&photo).unwrap().whole, Whole::Yes);
        let cut = &photo[..photo.len() * 3 / 4];
        match sheet(cut) {
            Ok(copy) => assert_eq!(copy.whole, Whole::CutShort),
            Err(why) => assert_eq!(why, PhotoCopyError::Broken),
        }
        assert!(!has_end(cut));
    }

    #[test]
    fn what_is_no_photo_is_told_in_a_sentence() {
        let mut heic = vec![0, 0, 0, 24];
        heic.extend(b"ftypheic");
        for (bytes, said) in [
            (&b""[..], "It holds nothing."),
            (&heic, "It is kept. This version cannot show HEIC."),
            (b"some text", "It is kept, but it is no JPEG, PNG or WebP."),
            (b"\xff\xd8\xff\xe0 noise", "It is kept but cannot be shown."),
        ] {
            assert_eq!(sheet(bytes).unwrap_err().to_string(), said);
        }
    }

    #[test]
    fn a_webp_that_claims_four_gigabytes_is_refused_before_memory_is_set_aside() {
        let mut webp = b"RIFF\x20\0\0\0WEBPVP8X\x0a\0\0\0".to_vec();
        webp.extend([0x08, 0, 0, 0, 9, 0, 0, 9, 0, 0]);
        webp.extend(b"EXIF\xf0\xff\xff\xff");
        assert_eq!(sheet(&webp).unwrap_err(), PhotoCopyError::Broken);
    }

    #[test]
    fn a_header_of_more_points_than_can_be_shown_is_refused_from_the_header() {
        let mut png = b"\x89PNG\r\n\x1a\n\0\0\0\x0dIHDR".to_vec();
        png.extend(40_000_u32.to_be_bytes());
        png.extend(40_000_u32.to_be_bytes());
        png.extend([8, 2, 0, 0, 0]);
        let crc = crc32(&png[12..]);
        png.extend(crc.to_be_bytes());
        png.extend(b"\0\0\0\0IDAT");
        png.extend(crc32(b"IDAT").to_be_bytes());
        assert_eq!(sheet(&png).unwrap_err(), PhotoCopyError::TooLarge);
    }

    /// The check sum of PNG chunks (PNG specification, annex D).
    fn crc32(bytes: &[u8]) -> u32 {
        !bytes.iter().fold(!0_u32, |crc, byte| {
            (0..8).fold(crc ^ u32::from(*byte), |crc, _| {
                if crc & 1 == 1 {
                    0xedb8_8320 ^ (crc >> 1)
                } else {
                    crc >> 1
                }
            })
        })
    }
}

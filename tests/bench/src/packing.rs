//! The firm's packet with photos of twelve million points beside the making of their copies alone,
//! with the same libraries at the same size.

use crate::{row, timed};
use eavebook_app::places::job_file::make::Wanted;
use eavebook_app::request::Edition;
use eavebook_app::{AboutPhoto, App, demo};
use eavebook_core::book::kinds::PhotoFrom;
use fast_image_resize::images::Image;
use fast_image_resize::{FilterType, PixelType, ResizeAlg, ResizeOptions, Resizer};
use jpeg_encoder::{ColorType, Encoder};
use std::error::Error;

const PHOTOS: u32 = 24;
const WIDTH: u32 = 4032;
const HEIGHT: u32 = 3024;
/// A copy's long and short side, and its quality.
const COPY: (u32, u32) = (1600, 1200);
const QUALITY: u8 = 80;

/// Both sides see the same photos, one after another.
pub fn run() -> Result<(), Box<dyn Error>> {
    let folder = tempfile::tempdir()?;
    let app = App::open(folder.path())?;
    let job = demo::book(&app)?.job;
    let photos = (0..PHOTOS).map(photo).collect::<Result<Vec<_>, _>>()?;
    for bytes in &photos {
        let about = AboutPhoto {
            job,
            of: None,
            from: PhotoFrom::File,
            place: None,
            distance: None,
            said_aloud: false,
            heading: None,
            tilt: None,
        };
        let _ = app.keep_photo(bytes, &about);
    }
    let whole: usize = photos.iter().map(Vec::len).sum();
    println!(
        "{PHOTOS} photos of {WIDTH} x {HEIGHT}, {} MB",
        whole / 1_000_000
    );
    let (copied, peer) = timed(|| {
        photos
            .iter()
            .map(|bytes| copy(bytes).map(|copy| copy.len()))
            .sum::<Result<usize, _>>()
    });
    let copied = copied?;
    let (made, ours) = timed(|| app.packet(job, Edition::Firm, Wanted::Newest));
    let packet = std::fs::metadata(made?.path)?.len();
    println!("copies {} kB, packet {} kB", copied / 1000, packet / 1000);
    row(
        "the firm's packet with 24 photos, against their copies",
        [ours, peer].map(|time| time.as_secs_f64()),
        "s",
        ("at most", 1.5),
    );
    Ok(())
}

/// A picture as large as a phone's: a slope of gray with a sky, and the noise of a sensor.
fn photo(number: u32) -> Result<Vec<u8>, jpeg_encoder::EncodingError> {
    let mut noise = u64::from(number) + 1;
    let mut points = Vec::with_capacity((WIDTH * HEIGHT * 3) as usize);
    for y in 0..HEIGHT {
        for x in 0..WIDTH {
            // Xorshift: Marsaglia 2003.
            noise ^= noise << 13;
            noise ^= noise >> 7;
            noise ^= noise << 17;
            let grain = (noise >> 56) as u32 / 12;
            let shade = (x + number * 97) * 120 / WIDTH;
            let light = y * 90 / HEIGHT;
            points.extend(
                [shade + grain, light + shade / 2 + grain, 60 + light + grain]
                    .map(|part| part.min(255) as u8),
            );
        }
    }
    let mut jpeg = Vec::new();
    Encoder::new(&mut jpeg, 85).encode(&points, WIDTH as u16, HEIGHT as u16, ColorType::Rgb)?;
    Ok(jpeg)
}

fn copy(photo: &[u8]) -> Result<Vec<u8>, Box<dyn Error>> {
    let whole = image::load_from_memory(photo)?.into_rgb8();
    let from = Image::from_vec_u8(
        whole.width(),
        whole.height(),
        whole.into_raw(),
        PixelType::U8x3,
    )?;
    let mut to = Image::new(COPY.0, COPY.1, PixelType::U8x3);
    let options = ResizeOptions::new().resize_alg(ResizeAlg::Convolution(FilterType::Lanczos3));
    Resizer::new().resize(&from, &mut to, &options)?;
    let mut jpeg = Vec::new();
    let (width, height) = (COPY.0 as u16, COPY.1 as u16);
    Encoder::new(&mut jpeg, QUALITY).encode(to.buffer(), width, height, ColorType::Rgb)?;
    Ok(jpeg)
}

//! What the QR codes on a photo say (ISO/IEC 18004).

use crate::sheet::{self, PhotoCopyError};
use image::GrayImage;
use image::imageops::{self, FilterType};
use rqrr::PreparedImage;

/// Sizes at which a photo is looked at until something is read: a square far off is read larger, noise and
/// blur are averaged out smaller.
const LOOKS: [f32; 5] = [1.0, 0.75, 0.5, 0.33, 1.5];

/// What each square on a photo says, in the order in which they are found; empty where none is read.
///
/// A square proves itself by the error correction in it: what cannot be read whole is not told.
///
/// # Errors
/// As for a sheet copy, where the photo cannot be looked at.
pub fn squares(photo: &[u8]) -> Result<Vec<String>, PhotoCopyError> {
    let points = imageops::grayscale(&sheet::upright(photo)?);
    for look in LOOKS {
        let sized = |side: u32| ((side as f32 * look) as u32).max(1);
        let (width, height) = (sized(points.width()), sized(points.height()));
        let seen = imageops::resize(&points, width, height, FilterType::Triangle);
        // The search goes by rows: what it takes for a corner by mistake it does not take so by columns.
        for seen in [imageops::rotate90(&seen), seen] {
            let told = read(&seen);
            if !told.is_empty() {
                return Ok(told);
            }
        }
    }
    Ok(Vec::new())
}

fn read(points: &GrayImage) -> Vec<String> {
    let (width, height) = (points.width() as usize, points.height() as usize);
    let shade = |x, y| points.as_raw()[y * width + x];
    let mut prepared = PreparedImage::prepare_from_greyscale(width, height, shade);
    let grids = prepared.detect_grids();
    let read = grids.iter().filter_map(|grid| grid.decode().ok());
    read.map(|(_, text)| text).collect()
}

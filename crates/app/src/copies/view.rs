//! Where copies of a job are, in words. Only what the hub has acknowledged counts as a copy there.

use crate::copies::reply::{CopiesView, HubView};
use crate::figures::number;
use crate::names;
use crate::parts::copies::words;
use crate::refusal::Refusal;
use crate::sentence::{Sentence, sentence};
use eavebook_store::{BackupCounts, ImportReport, Store};
use std::fmt::Display;
use uuid::Uuid;

/// Returns the state of the copies; whether this machine runs a hub is the caller's to add.
///
/// # Errors
/// When the book cannot be read.
pub fn view(book: &Store, job: Option<Uuid>) -> Result<CopiesView, Refusal> {
    let copies = job.map(|job| book.copies(job)).transpose()?;
    let entries_of_others = job.map_or(Ok(0), |job| book.entries_of_others(job))?;
    Ok(CopiesView {
        copies: copies.map(|copies| words(copies, book.hub_message())),
        entries_of_others: u32::try_from(entries_of_others).unwrap_or(u32::MAX),
        hub: book.pairing()?.map(|pairing| HubView {
            company: pairing.company,
            address: pairing.url,
        }),
        called: book
            .device()
            .map(|device| names::device(device.id))
            .unwrap_or_default(),
        shares: false,
        room: book.photos().free().ok().map(room),
    })
}

/// What a file carried by hand brought. `addresses`: of the first of its jobs.
#[must_use]
pub fn imported(brought: &ImportReport, addresses: &[String]) -> Sentence {
    let of = match (brought.jobs.len(), addresses) {
        (0, _) => {
            return sentence(
                "brought_none",
                "That book is empty: nothing came.".to_owned(),
            );
        }
        (1, [address]) => address.clone(),
        (jobs, _) => {
            let others = if jobs > addresses.len() {
                "; and others"
            } else {
                ""
            };
            format!("{jobs} jobs: {}{others}", addresses.join("; "))
        }
    };
    let both = |entries, photos| match photos {
        0 => counted(entries, "entry", "entries"),
        photos => format!(
            "{} and {}",
            counted(entries, "entry", "entries"),
            counted(photos, "photo", "photos")
        ),
    };
    let (new, known) = (
        both(brought.entries, brought.photos),
        both(brought.known, brought.known_photos),
    );
    let nothing_new = brought.entries + brought.photos + brought.conflicts == 0;
    let nothing_known = brought.known + brought.known_photos == 0;
    let mut words = match (nothing_new, nothing_known) {
        (true, _) => format!("Nothing new: {known} of {of} were here already."),
        (false, true) => format!("Brought in: {new} of {of}."),
        (false, false) => format!("Brought in: {new} of {of}. {known} were here already."),
    };
    if brought.conflicts > 0 {
        let conflicts = counted(brought.conflicts, "entry has", "entries have");
        words.push_str(&format!(
            " {conflicts} an id that is taken: both are kept, look at them."
        ));
    }
    sentence("brought", words)
}

/// What a copy of the whole book holds. `file`: its name, or where it lies.
#[must_use]
pub fn copied(file: &dyn Display, held: BackupCounts) -> Sentence {
    let holds = holds(held);
    let words =
        format!("{file} holds {holds} It is a second copy once it lies on another machine.");
    sentence("copied", words)
}

/// "86 entries, 1 photo, 2 packets.", and what no copy has.
#[must_use]
pub fn holds(held: BackupCounts) -> String {
    let lacking = match held.lacking {
        0 => String::new(),
        lacking => {
            let lacking = counted(lacking, "photo was", "photos were");
            format!(" {lacking} not on the disk and in no copy of it.")
        }
    };
    format!(
        "{}, {}, {}.{lacking}",
        counted(held.entries, "entry", "entries"),
        counted(held.photos, "photo", "photos"),
        counted(held.packets, "packet", "packets")
    )
}

fn counted(count: u64, one: &str, many: &str) -> String {
    let word = if count == 1 { one } else { many };
    format!("{count} {word}")
}

/// A photo of 12 megapixels, bytes: as large as phones write them (common practice).
const USUAL_PHOTO: u64 = 3_000_000;
/// Fewer than so many are told as a warning.
const FEW: u64 = 50;

/// For how many more photos there is room. `free`: bytes.
fn room(free: u64) -> Sentence {
    let count = free / USUAL_PHOTO;
    if count < FEW {
        let words = format!(
            "Room for about {count} photos only. Make room on this device, or a copy first."
        );
        return sentence("room_low", words);
    }
    // Two figures: nobody knows it better.
    let step = 10_u64.pow(count.ilog10().saturating_sub(1));
    let about = number((count / step * step) as f64, 0);
    sentence("room", format!("Room for about {about} photos."))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn room_is_told_to_two_figures_and_little_of_it_is_a_warning() {
        assert_eq!(room(2_790_000_000).en, "Room for about 930 photos.");
        assert_eq!(room(24_800_000_000).en, "Room for about 8,200 photos.");
        let low = room(49 * 3_000_000);
        assert_eq!(low.code, "room_low");
        assert!(
            low.en.starts_with("Room for about 49 photos only."),
            "{}",
            low.en
        );
        assert_eq!(room(0).code, "room_low");
    }
}

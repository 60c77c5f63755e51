//! What was said aloud and waits to be typed.

use crate::names;
use crate::parts::solved_job::SolvedJob;
use crate::parts::things;
use crate::places::field_book::reply::ClipView;

/// Clips that nobody typed or struck, the newest first.
#[must_use]
pub fn view(seen: &SolvedJob) -> Vec<ClipView> {
    let waiting = seen.book.clips.iter().rev();
    waiting
        .filter(|clip| clip.struck.is_none())
        .map(|clip| {
            let of = clip.what.of.as_ref();
            let title = of.map_or_else(|| "No thing named".to_owned(), things::plain_title);
            ClipView {
                entry: clip.entry,
                sha256: clip.what.sha256.clone(),
                read: of.cloned(),
                words: format!(
                    "{title}, said {}, {}",
                    names::time_of_day(&clip.local_time),
                    things::whose(seen, clip.device, &clip.author)
                ),
            }
        })
        .collect()
}

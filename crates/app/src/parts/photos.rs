//! Photos by name, with their captions.

use crate::names;
use eavebook_core::book::fold::FieldBook;
use eavebook_core::book::kinds::Kind;

/// Photos by name with their captions, the newest first.
pub fn photos_in(book: &FieldBook) -> impl Iterator<Item = (String, String)> {
    let kept = book.acts.iter().filter(|act| act.in_force);
    let kept = kept.filter_map(|act| {
        let Kind::Photo(photo) = &act.kind else {
            return None;
        };
        Some((photo, &act.local_time))
    });
    let kept: Vec<_> = kept.collect();
    let numbered = kept.into_iter().enumerate().rev();
    numbered.map(|(place, (photo, local_time))| {
        let number = place + 1;
        let of = photo
            .of
            .as_ref()
            .map(|thing| names::capital(&names::name(thing)));
        let at = names::time_of_day(local_time);
        let caption = [of.unwrap_or_else(|| format!("Photo {number}")), at].join(", ");
        (format!("photo {number}"), caption)
    })
}

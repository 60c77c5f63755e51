//! Cautions with their codes, as a reply carries them.

use crate::places::plan::totals;
use crate::sentence::{self, Sentence};
use eavebook_core::check::Caution;
use eavebook_core::solve::at_house;
use eavebook_core::uncertainty::AlternativeTopology;
use eavebook_core::units::RoundTo;

/// One caution.
#[must_use]
pub fn said(caution: &Caution) -> Sentence {
    sentence::sentence(caution.code(), at_house::words(caution))
}

/// Edges that readings as likely as those that were booked make longer or shorter.
#[must_use]
pub fn other_picture(picture: &AlternativeTopology, to: RoundTo) -> Sentence {
    let words = format!(
        "{}: {} as drawn, but readings as likely make it {}. The roof is near another shape: order \
         for the longer, or read the legs there again.",
        totals::name_of(picture.kind),
        picture.drawn.words(to),
        picture.other.words(to)
    );
    sentence::sentence("other_shape", words)
}

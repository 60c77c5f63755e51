//! What a job comes to, worked out once for all that is shown of it.

use crate::open_job::OpenJob;
use eavebook_core::book::kinds::{Side, TapeMarks, Thing};
use eavebook_core::book::lay_out::LaidOut;
use eavebook_core::check::{Proof, Standing, spanned};
use eavebook_core::solve::{self, Solved};
use eavebook_core::uncertainty::UncertaintySource;
use eavebook_core::units::RoundTo;
use eavebook_words::Language;
use std::ops::Deref;
use uuid::Uuid;

/// One job, folded and worked out, with what must not be seen.
pub struct SolvedJob<'a> {
    /// What was booked, laid out and worked out.
    pub standing: Standing<'a>,
    /// The solution; `None` while the walk is open.
    pub solved: Option<&'a Solved>,
    /// The thing that is being read again without sight of its value.
    pub hidden: Option<&'a Thing>,
    /// This device.
    pub device: Uuid,
    /// On which side of the walker the building stands.
    pub building_on: Side,
    /// How the tape of this device is marked.
    pub tape: TapeMarks,
    /// In what figures are spoken.
    pub language: Language,
}

/// What a job comes to; none while its line is open, or where its readings make no outline.
#[must_use]
pub fn solve(laid: &LaidOut) -> Option<Solved> {
    solve::solve(laid.survey.as_ref()?).ok()
}

// All that is shown asks how well things are known.
impl<'a> Deref for SolvedJob<'a> {
    type Target = Standing<'a>;

    fn deref(&self) -> &Standing<'a> {
        &self.standing
    }
}

impl<'a> SolvedJob<'a> {
    /// A job with what it comes to. `hidden`: what is being read again without sight.
    #[must_use]
    pub fn new(
        opened: &'a OpenJob,
        laid: &'a LaidOut,
        solved: Option<&'a Solved>,
        hidden: Option<&'a Thing>,
    ) -> SolvedJob<'a> {
        let walked_on = opened
            .book
            .corners
            .first()
            .map(|(_, corner)| corner.building_on);
        SolvedJob {
            standing: Standing {
                book: &opened.book,
                laid,
                bodies: solved.map_or(&[], |solved| &solved.bodies),
            },
            solved,
            hidden,
            device: opened.device,
            building_on: walked_on.unwrap_or(opened.settings.building_on()),
            tape: opened.settings.tape(),
            language: opened.settings.language(),
        }
    }

    /// How finely worked-out lengths are shown.
    #[must_use]
    pub fn round_to(&self) -> RoundTo {
        match self.tape {
            TapeMarks::FeetInches => RoundTo::Inch,
            TapeMarks::FeetTenths => RoundTo::TenthFoot,
            TapeMarks::Meters => RoundTo::Centimeter,
        }
    }

    /// Whether the value of a thing must not be seen now.
    #[must_use]
    pub fn hides(&self, thing: &Thing) -> bool {
        self.hidden == Some(thing)
    }

    /// The thing of which a second reading would gain the most.
    #[must_use]
    pub fn read_first(&self) -> Option<Thing> {
        self.solved?
            .read_first
            .iter()
            .find_map(|first| match first.again {
                UncertaintySource::Reading { reading, .. } => {
                    spanned(self.survey_readings().get(reading)?.span)
                }
                UncertaintySource::Pitch { .. } => None,
            })
    }

    /// How far the others check the only reading of a leg or a tie; none where it was read more often,
    /// or not at all.
    #[must_use]
    pub fn proof(&self, thing: &Thing) -> Option<&'a Proof> {
        let proofs = self.solved?.proofs.iter();
        let mut of_it = proofs.filter(|proof| {
            let reading = self.survey_readings().get(proof.reading);
            reading.and_then(|reading| spanned(reading.span)).as_ref() == Some(thing)
        });
        let first = of_it.next()?;
        of_it.next().is_none().then_some(first)
    }

    /// Whether the line has come round to its start.
    #[must_use]
    pub fn is_shut(&self) -> bool {
        self.laid.is_round()
    }
}

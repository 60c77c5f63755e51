//! What is not known of a house, said the same wherever it stands.

use crate::edition::Lang;
use crate::job::Job;
use crate::named::{self, Parts};
use crate::words::{self, either};
use eavebook_core::book::kinds::Thing;
use eavebook_core::book::on_roof;
use eavebook_core::naming::FaceName;
use eavebook_core::pitch::SettledRise;
use eavebook_core::survey::Rise;

/// Something not known.
#[derive(Clone, Debug, PartialEq)]
pub enum NotKnown {
    /// The walk has not come round.
    LineOpen,
    /// A leg without a length.
    Length(u32),
    /// A leg worked out from the others.
    NoReading(u32),
    /// A reading against which the others speak.
    Suspect(Thing),
    /// No slope at all.
    AnyPitch,
    /// The slope of a face.
    Pitch(FaceName),
    /// A slope taken over from another face and not read.
    PitchAsOf(FaceName, FaceName),
    /// What lies under the covering.
    Deck,
    /// How many layers lie on it.
    Layers,
    /// What stands out of the roof.
    Items,
    /// A size of something that stands out of it.
    SizeOf(Thing),
    /// How far the eaves stand out past the walls.
    Overhangs,
}

impl NotKnown {
    /// In a few words, without a full stop.
    pub fn say(&self, lang: Lang) -> String {
        match (self, lang) {
            (NotKnown::LineOpen, _) => either(
                lang,
                "where the line of the eaves comes round to its start",
                "dónde cierra la línea del alero",
            )
            .to_owned(),
            (NotKnown::Length(leg), Lang::En) => format!("length of leg {leg}"),
            (NotKnown::Length(leg), Lang::Es) => format!("largo del lado {leg}"),
            (NotKnown::NoReading(leg), Lang::En) => {
                format!("leg {leg} by a reading: it is worked out from the others")
            }
            (NotKnown::NoReading(leg), Lang::Es) => {
                format!("el lado {leg} con cinta: sale de los otros lados")
            }
            (NotKnown::Suspect(thing), Lang::En) => format!(
                "whether {} was read right: the other readings speak against it",
                thing.name()
            ),
            (NotKnown::Suspect(thing), Lang::Es) => format!(
                "si se leyó bien {}: las otras medidas dicen que no",
                thing.name()
            ),
            (NotKnown::AnyPitch, _) => either(
                lang,
                "the pitch of any face",
                "la pendiente de ninguna cara",
            )
            .to_owned(),
            (NotKnown::Pitch(face), Lang::En) => format!("pitch of face {}", face.name()),
            (NotKnown::Pitch(face), Lang::Es) => {
                format!("pendiente de la cara {}", words::face_place(*face, lang))
            }
            (NotKnown::PitchAsOf(face, other), Lang::En) => format!(
                "pitch of face {} by a reading: it is taken as that of {}",
                face.name(),
                other.name()
            ),
            (NotKnown::PitchAsOf(face, other), Lang::Es) => format!(
                "pendiente de la cara {}: se tomó la misma que {}, no se midió",
                words::face_place(*face, lang),
                words::face_place(*other, lang)
            ),
            (NotKnown::Deck, _) => either(
                lang,
                "what the deck is made of: nobody looked under the covering",
                "de qué es la madera de base: nadie miró debajo",
            )
            .to_owned(),
            (NotKnown::Layers, _) => either(
                lang,
                "how many layers lie on the roof",
                "cuántas capas hay en el techo",
            )
            .to_owned(),
            (NotKnown::SizeOf(thing), Lang::En) => format!("size of {}", thing.name()),
            (NotKnown::SizeOf(thing), Lang::Es) => format!("medida de {}", thing.name()),
            (NotKnown::Overhangs, _) => either(
                lang,
                "how far the eaves stand out past the walls",
                "cuánto sale el alero de la pared",
            )
            .to_owned(),
            (NotKnown::Items, _) => either(
                lang,
                "what stands out of the roof: nothing was booked",
                "qué sale del techo: no se anotó nada",
            )
            .to_owned(),
        }
    }
}

/// What is not known of a job, in the order of the walk.
pub fn not_known(job: &Job, parts: &Parts) -> Vec<NotKnown> {
    let mut all = Vec::new();
    if !job.laid.is_round() {
        all.push(NotKnown::LineOpen);
    }
    let legs = job
        .standing()
        .outline()
        .map(|outline| outline.legs.as_slice());
    for (figure, leg) in legs.unwrap_or_default().iter().zip(1..) {
        match figure.length {
            None => all.push(NotKnown::Length(leg)),
            Some(_) if figure.worked_out => all.push(NotKnown::NoReading(leg)),
            Some(_) => {}
        }
    }
    all.extend(
        named::suspects(&job.standing())
            .into_iter()
            .map(NotKnown::Suspect),
    );
    all.extend(slopes(job, parts));
    let survey = job.laid.survey.as_ref();
    let deck = survey.and_then(|survey| survey.deck.as_ref()?.kind.as_ref());
    let layers = survey.and_then(|survey| survey.covering.as_ref()?.layers);
    let items = !on_roof::items(job.book).is_empty();
    let overhangs = named::body(&job.standing()).is_some_and(|body| {
        let eaves = body
            .edges
            .iter()
            .filter(|edge| !matches!(edge.rise, Rise::Gable | Rise::Wall));
        eaves.into_iter().all(|edge| edge.overhang.is_some())
    });
    all.extend(deck.is_none().then_some(NotKnown::Deck));
    all.extend(layers.is_none().then_some(NotKnown::Layers));
    all.extend((!items).then_some(NotKnown::Items));
    all.extend(
        on_roof::unsized_items(job.book)
            .into_iter()
            .map(NotKnown::SizeOf),
    );
    all.extend((!overhangs).then_some(NotKnown::Overhangs));
    all
}

fn slopes(job: &Job, parts: &Parts) -> Vec<NotKnown> {
    let Some(body) = job.solved.and_then(|solved| solved.bodies.first()) else {
        return vec![NotKnown::AnyPitch];
    };
    let place = |leg: usize| parts.places.get(leg).copied();
    let rises = body.rises.iter().enumerate();
    rises
        .filter_map(|(leg, rise)| match rise {
            SettledRise::Unknown => Some(NotKnown::Pitch(place(leg)?)),
            SettledRise::Slope(pitch) if pitch.read_at != leg => {
                Some(NotKnown::PitchAsOf(place(leg)?, place(pitch.read_at)?))
            }
            SettledRise::Slope(_)
            | SettledRise::Bands(_)
            | SettledRise::Gable
            | SettledRise::Wall => None,
        })
        .collect()
}

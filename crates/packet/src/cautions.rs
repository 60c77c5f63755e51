//! The usual cautions, at the paper where the choice is made. They point to local rules and to
//! people who know, and say of nothing that it is free of danger.
//!
//! Sources: OSHA 29 CFR 1926.501(b)(13) on falls from six feet, OSHA's hazard alert on roofs under
//! snow (ten feet from lines), EPA's rule on lead in renovation.

use crate::edition::Lang;
use crate::job::Job;
use crate::words::either;
use eavebook_core::book::names::capital;
use eavebook_core::check::Caution;
use eavebook_core::pitch::Footing;
use eavebook_core::solve::{Comparison, at_house};

/// Before anybody climbs.
pub fn climbing(lang: Lang) -> String {
    either(
        lang,
        "Fall protection rules for roof work often begin at six feet and may be stricter here. Follow your local rule and your firm's plan. Not trained or not tied off: stay down.",
        "Las reglas contra caídas muchas veces empiezan a los seis pies, y aquí pueden pedir más. Sigan la regla local y el plan de la compañía. Sin entrenamiento o sin amarre: no suban.",
    )
    .to_owned()
}

/// Ice, snow, frost.
pub fn ice(lang: Lang) -> String {
    either(
        lang,
        "Ice, frost, snow or wet: stay off. Snow hides skylights, edges and weak deck.",
        "Hielo, escarcha, nieve o mojado: no suban. La nieve tapa tragaluces, orillas y madera débil.",
    )
    .to_owned()
}

/// The wires to the house.
pub fn wires(lang: Lang) -> String {
    either(
        lang,
        "Treat every wire as live, also the one to the house. Ten feet is a common least distance, more for higher voltage. If you cannot keep it, ask the utility first.",
        "Traten todo cable como vivo, también el que entra a la casa. Diez pies es la distancia mínima común, más si el voltaje es alto. Si no se puede, pregunten antes a la compañía de luz.",
    )
    .to_owned()
}

/// Weight and weak framing.
pub fn structure(lang: Lang) -> String {
    either(
        lang,
        "Sagging, cracked or spongy framing, a heavier covering, or stacked loads need a qualified person's word, not this sum.",
        "Si la estructura está vencida, rota o blanda, si el material pesa más o se va a apilar carga: eso lo dice una persona calificada, no esta cuenta.",
    )
    .to_owned()
}

/// Old paint, old felt.
pub fn lead_and_asbestos(lang: Lang) -> String {
    either(
        lang,
        "House before 1978 or age unknown: rules on lead paint may apply before painted parts are cut or scraped. Old felt, tile or siding may hold asbestos: do not break it to look, ask a licensed tester.",
        "Casa de antes de 1978 o no se sabe: puede haber reglas de pintura con plomo antes de cortar o raspar. Fieltro, teja o forro viejo puede tener asbesto: no lo rompan para ver, llamen a alguien con licencia.",
    )
    .to_owned()
}

/// Rules of building.
pub fn permit_office() -> String {
    "Notes someone read on the date shown. The permit office decides: check with the permit office."
        .to_owned()
}

/// Whose word an insurer's matter is.
pub fn insurance() -> String {
    "This packet says what was seen and measured. Cover and claim handling are for the insurer and, where the law says so, licensed people.".to_owned()
}

/// What the computation says to look at.
pub fn of_job(job: &Job, lang: Lang) -> Vec<String> {
    let all = job
        .solved
        .map(|solved| solved.cautions.as_slice())
        .unwrap_or_default();
    // A pitch from one place stands with the face that was read once already.
    let is_said = |caution: &&Caution| {
        let one_place = Footing::OnePlace;
        !matches!(caution, Caution::PitchStands { on, .. } if *on == one_place)
    };
    let said = all.iter().filter(is_said).map(|caution| match lang {
        Lang::En => at_house::words(caution),
        Lang::Es => in_spanish(caution),
    });
    said.chain(seen_otherwise(job, lang)).collect()
}

/// What was seen of the roof and speaks against the computed one.
fn seen_otherwise(job: &Job, lang: Lang) -> Vec<String> {
    let judged = job.laid.survey.as_ref().zip(job.solved);
    let judged = judged.map(|(survey, solved)| at_house::seen(survey, solved));
    let flagged = judged.unwrap_or_default().into_iter();
    let flagged = flagged.filter(|judged| matches!(judged, Comparison::Flagged(_)));
    flagged
        .map(|judged| match lang {
            Lang::En => capital(judged.words()),
            Lang::Es => "Lo que se vio del techo no es lo que está dibujado: vean el plano con la \
                         oficina."
                .to_owned(),
        })
        .collect()
}

fn in_spanish(caution: &Caution) -> String {
    match caution {
        Caution::RoofUnavailable(_) => "Todavía no sale el techo: faltan medidas.".to_owned(),
        Caution::NotChecked { .. } => {
            "Un lado salió de los otros, así que el contorno no está comprobado: midan ese lado o una diagonal.".to_owned()
        }
        Caution::Lacks { .. } => {
            "Hay una medida que ninguna lectura dice: pregunten en la oficina cuál falta.".to_owned()
        }
        Caution::InParts { .. } => {
            "El contorno está en partes que ninguna medida une: midan una distancia de una a la otra.".to_owned()
        }
        Caution::Hearsay { source, percent, .. } => format!(
            "Lo que dice {source} se aparta {} % de lo que medimos: quedan las medidas nuestras.",
            tenths(percent.abs())
        ),
        Caution::Roof(_) => "La forma del techo tiene algo que revisar: vean el plano con la oficina.".to_owned(),
        Caution::OverEight { pitch } => format!(
            "Hay una pendiente de {} en 12, más de 8 en 12: empinada, es fácil caerse. No la pisen sin protección contra caídas; la regla local dice cuál.",
            tenths(pitch.in_12())
        ),
        Caution::UnderFour { pitch } => format!(
            "Hay una pendiente de {} en 12, menos de 4 en 12: ahí se acostumbra fieltro doble, y con menos de 2 en 12 casi no se pone shingle. Pregunten en la oficina de permisos.",
            tenths(pitch.in_12())
        ),
        Caution::PitchStands { .. } => {
            "Una pendiente sale de pocas lecturas o de un solo lugar: midan en más lugares, arriba de la segunda hilada.".to_owned()
        }
        Caution::PitchUneven { .. } => {
            "Los lugares de una pendiente no dan lo mismo: midan en otro lugar y vean si la cara se hunde o se levanta.".to_owned()
        }
        Caution::PhoneAskew { by, .. } => format!(
            "En una lectura el error de cero del teléfono se aparta {} grados del de las otras: estaba torcido o era otro teléfono. Pónganlo otra vez.",
            tenths(by.in_degrees().abs())
        ),
        Caution::WideChimney { inches, .. } => format!(
            "La chimenea mide {} pulg de ancho, más de 30: atrás muchas veces piden un cricket. Pregunten en la oficina de permisos.",
            tenths(*inches)
        ),
        Caution::Layers { layers } => format!(
            "Hay {layers} capas en el techo: encima de ellas casi nunca se permite otra, y quitarlas pesa más."
        ),
        Caution::PlankGaps { inches } => format!(
            "Entre tablas hay separaciones de {} pulg, más de 1/4: ahí el clavo no agarra. Se acostumbra poner hojas encima.",
            tenths(*inches)
        ),
        Caution::AsbestosCement => {
            "Dicen que el material es asbesto-cemento: no lo rompan, corten ni barran. Paren, que lo prueben, y pregunten a la autoridad antes de quitarlo.".to_owned()
        }
        Caution::OnNoFace { .. } => "Algo que sale del techo no está en ninguna cara: revisen su lugar.".to_owned(),
    }
}

fn tenths(number: f64) -> f64 {
    (number * 10.0).round() / 10.0
}

use super::StoryMessage;
use crate::{Es, Format};
use chrono::{DateTime, FixedOffset};
use eavebook_core::book::fold::TakenOut;
use eavebook_core::book::kinds::{Followed, HowRead, Thing};

pub(super) fn text(message: &StoryMessage, f: &Es) -> String {
    match message {
        StoryMessage::ReadingOutOfForce { thing, reading, read_at, how, struck_at, reason } => { let reason = reason.as_ref().map_or_else(|| "sin motivo".to_owned(), |reason| format!("motivo \"{}\"", reason.0)); format!("{}, {}, medida{}: {}{}, {reason}.", f.thing_first(thing), f.reading(reading), at(read_at.as_ref(), f), taken_out(*how), at(struck_at.as_ref(), f)) },
        StoryMessage::PitchInTwelve { rise } => format!("{} en 12", f.number(*rise, 3)),
        StoryMessage::PitchRiseInRun { rise, run } => format!("{} pulg de subida en {} pulg", f.number(*rise, 3), f.number(*run, 3)),
        StoryMessage::PitchSameAs { leg } => format!("La misma que el {}", f.leg(*leg)),
        StoryMessage::HowRead { how, followed } => format!("{}{}", how_read(*how), along(*followed)),
        StoryMessage::WorkedOut => "Calculado de los otros lados".to_owned(),
        StoryMessage::OneUncheckedReading => "1 medida, nada la comprueba".to_owned(),
        StoryMessage::Readings { count } => f.count(*count),
        StoryMessage::LeastSquares => "Los largos se ajustan por mínimos cuadrados, cada medida según su propio ±. El error más chico que se notaría es según Baarda 1968.".to_owned(),
        StoryMessage::Disagree { things } => format!("Las medidas no cuadran en {}. No se corrigió nada: los números usan todas las medidas como se anotaron.", thing_list(things, f)),
        StoryMessage::AreaFormula { footprint, area } => format!("El área de un agua es su planta por la raíz cuadrada de 1 + (subida / 12)², y el techo es la suma de sus aguas: planta {}, área {}. El ± incluye el de cada esquina y cada pendiente.", f.area(*footprint), f.area_figure(*area)),
        StoryMessage::ChangedSince { version } => format!("Cambios desde la versión {version}"),
    }
}

fn at(time: Option<&DateTime<FixedOffset>>, f: &Es) -> String {
    time.map_or_else(String::new, |time| format!(" el {}", f.day_and_time(time)))
}

fn taken_out(how: TakenOut) -> &'static str {
    match how {
        TakenOut::Strike => "tachada",
        TakenOut::Undo => "deshecha",
        TakenOut::Replaced => "reemplazada",
    }
}

fn how_read(how: HowRead) -> &'static str {
    match how {
        HowRead::Taped => "Con cinta",
        HowRead::Paced => "A pasos",
        HowRead::OffPhoto => "Sacada de una foto",
        HowRead::Told => "De oídas, sin medir",
    }
}

fn along(followed: Option<Followed>) -> &'static str {
    match followed {
        None => "",
        Some(Followed::EaveEdge) => " por la orilla del alero",
        Some(Followed::GutterFace) => " por la cara del canalón",
        Some(Followed::Wall) => " por la pared",
    }
}

fn thing_list(things: &[Thing], f: &Es) -> String {
    let names: Vec<String> = things.iter().map(|thing| f.thing(thing)).collect();
    f.and(&names)
}

//! The trade's words in both languages, and figures with their units in them.

use crate::edition::Lang;
use crate::named::{NamedEdge, NamedFace};
use eavebook_core::book::house_side::HouseSide;
use eavebook_core::book::kinds::{EndKind, ItemKind, SaddleObserved};
pub use eavebook_core::book::names::capital;
use eavebook_core::naming::FaceName;
use eavebook_core::roof::EdgeKind;
use eavebook_core::units::{Area, Figure, Length, Pitch, RoundTo};

/// A text that stands in both languages: one of the two.
pub fn either<'t>(lang: Lang, en: &'t str, es: &'t str) -> &'t str {
    match lang {
        Lang::En => en,
        Lang::Es => es,
    }
}

/// `14 ft 3 in`, `14 pies 3 pulg`.
pub fn length(length: Length, lang: Lang) -> String {
    in_lang(&length.words(RoundTo::Inch), lang)
}

/// `14 ft 3 in ± 2 in`.
pub fn length_give_or_take(value: Length, sigma: Option<Length>, lang: Lang) -> String {
    let said = length(value, lang);
    match sigma {
        Some(sigma) => {
            let more = Figure { value, sigma }.give_or_take(RoundTo::Inch);
            let more = in_lang(&more, lang);
            format!("{said} {more}")
        }
        None => said,
    }
}

/// `14' 3"`: short, for a drawing, and read in both languages.
pub fn marks(length: Length) -> String {
    let said = length.words(RoundTo::Inch);
    said.replace(" ft", "'").replace(" in", "\"")
}

/// `2,013 sq ft`.
pub fn area(area: Area, lang: Lang) -> String {
    match lang {
        Lang::En => area.words(),
        Lang::Es => area.words().replace("sq ft", "pies²"),
    }
}

/// `2,013 ± 35 sq ft`.
pub fn area_give_or_take(figure: Figure<Area>, lang: Lang) -> String {
    let unit = " sq ft";
    let value = figure.words();
    let said = match value.strip_suffix(unit) {
        Some(value) => format!("{value} {}", figure.give_or_take()),
        None => value,
    };
    match lang {
        Lang::En => said,
        Lang::Es => said.replace("sq ft", "pies²"),
    }
}

/// `20.1 squares`: a square is 100 sq ft of roof.
pub fn squares(area: Area, lang: Lang) -> String {
    format!(
        "{:.1} {}",
        area.in_squares(),
        either(lang, "squares", "cuadros")
    )
}

/// `6 in 12`.
pub fn pitch(pitch: Pitch, lang: Lang) -> String {
    let tenths = (pitch.in_12() * 10.0).round() / 10.0;
    format!("{tenths} {} 12", either(lang, "in", "en"))
}

/// `6 in 12 ± 0.3`; without it where the pitch was given as a number.
pub fn pitch_give_or_take(value: Pitch, sigma_in_12: Option<f64>, lang: Lang) -> String {
    let said = pitch(value, lang);
    match sigma_in_12 {
        // Upward, as every other ±.
        Some(sigma) => format!("{said} ± {:.1}", (sigma * 10.0).ceil() / 10.0),
        None => said,
    }
}

/// `Eave`, `Alero`.
pub fn edge_kind(kind: Option<EdgeKind>, lang: Lang) -> &'static str {
    match (lang, kind) {
        (Lang::En, Some(kind)) => kind.title(),
        (Lang::En, None) => "Leg",
        (Lang::Es, None) => "Lado",
        (Lang::Es, Some(EdgeKind::Eave)) => "Alero",
        (Lang::Es, Some(EdgeKind::Rake)) => "Orilla del gablete",
        (Lang::Es, Some(EdgeKind::Ridge)) => "Cumbrera",
        (Lang::Es, Some(EdgeKind::Hip)) => "Lima",
        (Lang::Es, Some(EdgeKind::Valley)) => "Valle",
        (Lang::Es, Some(EdgeKind::SideWall)) => "Pared de lado",
        (Lang::Es, Some(EdgeKind::HeadWall)) => "Pared de arriba",
        (Lang::Es, Some(EdgeKind::PitchBreak)) => "Cambio de pendiente",
    }
}

/// `back`, `atrás`.
pub fn side(side: HouseSide, lang: Lang) -> &'static str {
    match (lang, side) {
        (Lang::En, side) => side.word(),
        (Lang::Es, HouseSide::Front) => "frente",
        (Lang::Es, HouseSide::Right) => "derecha",
        (Lang::Es, HouseSide::Back) => "atrás",
        (Lang::Es, HouseSide::Left) => "izquierda",
    }
}

/// `Back 2`, `Atrás 2`.
pub fn face_place(place: FaceName, lang: Lang) -> String {
    if lang == Lang::En {
        return place.name();
    }
    let side = capital(side(place.side, lang));
    let word = match place.end {
        EndKind::Sloped => side,
        EndKind::Gable => format!("Gablete, {}", side.to_lowercase()),
        EndKind::Wall => format!("Pared, {}", side.to_lowercase()),
    };
    word + &place.suffix()
}

/// `Back 2b`.
pub fn face(face: &NamedFace, lang: Lang) -> String {
    face_place(face.place, lang)
}

/// The faces along an edge: `Back 2, Left`.
pub fn faces_along(edge: &NamedEdge, faces: &[NamedFace], lang: Lang) -> String {
    let along = edge.faces.iter().filter_map(|place| faces.get(*place));
    let names: Vec<String> = along.map(|one| face(one, lang)).collect();
    names.join(", ")
}

/// What stands out of a roof.
pub fn item(kind: ItemKind, lang: Lang) -> &'static str {
    match (lang, kind) {
        (Lang::En, kind) => kind.word(),
        (Lang::Es, ItemKind::Pipe) => "tubo",
        (Lang::Es, ItemKind::Mast) => "mástil",
        (Lang::Es, ItemKind::Flue) => "chimenea de metal",
        (Lang::Es, ItemKind::Chimney) => "chimenea",
        (Lang::Es, ItemKind::Skylight) => "tragaluz",
        (Lang::Es, ItemKind::BoxVent) => "ventila de caja",
        (Lang::Es, ItemKind::Fan) => "extractor",
        (Lang::Es, ItemKind::Dish) => "antena",
        (Lang::Es, ItemKind::Solar) => "paneles solares",
        (Lang::Es, ItemKind::Other) => "otra cosa",
    }
}

/// What was seen of a saddle behind a chimney.
pub fn saddle(seen: SaddleObserved, lang: Lang) -> &'static str {
    match seen {
        SaddleObserved::Yes => either(lang, "saddle behind it", "con cricket atrás"),
        SaddleObserved::No => either(lang, "no saddle", "sin cricket"),
        SaddleObserved::NotSeen => either(lang, "saddle not seen", "cricket: no se vio"),
    }
}

/// Feet and inches in the words of a language.
pub fn in_lang(figure: &str, lang: Lang) -> String {
    match lang {
        Lang::En => figure.to_owned(),
        Lang::Es => figure.replace(" ft", " pies").replace(" in", " pulg"),
    }
}

/// What a deck is made of, by the word that was booked.
pub fn deck(kind: &str, lang: Lang) -> String {
    match (lang, kind) {
        (Lang::Es, "plank") => "tabla".to_owned(),
        (Lang::Es, "sheet") => "hoja (triplay u OSB)".to_owned(),
        (Lang::En | Lang::Es, other) => other.to_owned(),
    }
}

/// Names in a row: `e4, r2 and h1`.
pub fn listed(names: &[String], lang: Lang) -> String {
    match names {
        [] => String::new(),
        [only] => only.clone(),
        [most @ .., last] => format!("{} {} {last}", most.join(", "), either(lang, "and", "y")),
    }
}

/// A count with its word in one or many.
pub fn counted(count: usize, one: &str, many: &str) -> String {
    format!("{count} {}", if count == 1 { one } else { many })
}

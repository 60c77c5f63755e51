use super::figures::Units;
use super::{CoveringName, DeckName, Format, Gender, Noun, spoken, when};
use crate::Language;
use chrono::{DateTime, Datelike, FixedOffset, NaiveDate};
use eavebook_core::book::house_side::HouseSide;
use eavebook_core::book::keypad::SlotUnit;
use eavebook_core::book::kinds::{DeckSizeOf, EndKind, ItemKind, SizeOf, Thing};
use eavebook_core::naming::FaceName;
use eavebook_core::roof::EdgeKind;
use eavebook_core::takeoff::{BootKind, OrderItem};
use eavebook_core::units::Tape;

/// Spanish as roofers in the United States speak it.
#[derive(Clone, Copy, Debug)]
pub struct Es;

impl Es {
    /// `el`, `la`.
    #[must_use]
    pub fn article(self, noun: Noun) -> &'static str {
        match self.gender(noun) {
            Gender::Masculine => "el",
            Gender::Feminine => "la",
        }
    }

    /// The gender of a noun.
    #[must_use]
    pub fn gender(self, noun: Noun) -> Gender {
        forms(noun).0
    }

    /// A participle or adjective in `-o` with the ending that a count asks for: `leído`, `leídas`.
    #[must_use]
    pub fn agreeing(self, stem: &str, noun: Noun, n: u64) -> String {
        let ending = match (self.gender(noun), n) {
            (Gender::Masculine, 1) => "o",
            (Gender::Feminine, 1) => "a",
            (Gender::Masculine, _) => "os",
            (Gender::Feminine, _) => "as",
        };
        format!("{stem}{ending}")
    }

    /// `del frente`, `de la derecha`: a side after "of".
    #[must_use]
    pub fn of_side(self, side: HouseSide) -> &'static str {
        match side {
            HouseSide::Front => "del frente",
            HouseSide::Right => "de la derecha",
            HouseSide::Back => "de atrás",
            HouseSide::Left => "de la izquierda",
        }
    }
}

impl Format for Es {
    fn language(&self) -> Language {
        Language::Spanish
    }

    fn units(&self) -> Units {
        Units {
            foot: "pie",
            feet: "pies",
            inches: "pulg",
            square_feet: "pies²",
            pounds: "lb",
            rise_in: "en",
        }
    }

    fn noun(&self, noun: Noun, n: u64) -> &'static str {
        let (_, one, many) = forms(noun);
        if n == 1 { one } else { many }
    }

    fn side(&self, side: HouseSide) -> &'static str {
        match side {
            HouseSide::Front => "frente",
            HouseSide::Right => "derecha",
            HouseSide::Back => "atrás",
            HouseSide::Left => "izquierda",
        }
    }

    fn face(&self, face: FaceName) -> String {
        let word = match face.end {
            EndKind::Sloped => super::capital(self.side(face.side)),
            EndKind::Gable => format!("Gablete {}", self.of_side(face.side)),
            EndKind::Wall => format!("Pared {}", self.of_side(face.side)),
        };
        word + &face.suffix()
    }

    fn edge_kind(&self, kind: EdgeKind) -> &'static str {
        match kind {
            EdgeKind::Eave => "alero",
            EdgeKind::Rake => "orilla inclinada",
            EdgeKind::Ridge => "cumbrera",
            EdgeKind::Hip => "limatesa",
            EdgeKind::Valley => "limahoya",
            EdgeKind::SideWall => "pared de lado",
            EdgeKind::HeadWall => "pared de arriba",
            EdgeKind::PitchBreak => "cambio de pendiente",
        }
    }

    fn item(&self, item: ItemKind) -> &'static str {
        match item {
            ItemKind::Pipe => "tubo",
            ItemKind::Mast => "mástil",
            ItemKind::Flue => "tubo de chimenea",
            ItemKind::Chimney => "chimenea",
            ItemKind::Skylight => "tragaluz",
            ItemKind::BoxVent => "ventila de caja",
            ItemKind::Fan => "extractor",
            ItemKind::Dish => "antena",
            ItemKind::Solar => "paneles solares",
            ItemKind::Other => "otra cosa",
        }
    }

    fn size(&self, size: SizeOf) -> &'static str {
        match size {
            SizeOf::Across => "medida",
            SizeOf::Width => "ancho",
            SizeOf::Depth => "fondo",
            SizeOf::Height => "alto",
        }
    }

    fn end(&self, end: EndKind) -> &'static str {
        match end {
            EndKind::Sloped => "un agua",
            EndKind::Gable => "un gablete",
            EndKind::Wall => "una pared",
        }
    }

    fn slot_unit(&self, unit: SlotUnit) -> &'static str {
        match unit {
            SlotUnit::Feet => "pies",
            SlotUnit::Inches => "pulg",
            SlotUnit::Tenths => "décimos",
            SlotUnit::Meters => "m",
            SlotUnit::Centimeters => "cm",
        }
    }

    fn even(&self) -> &'static str {
        "exacto"
    }

    fn thing(&self, thing: &Thing) -> String {
        match *thing {
            Thing::Leg { leg } => format!("lado {leg}"),
            Thing::Tie { from, to } => format!("diagonal {from}-{to}"),
            Thing::Item { item, number } => format!("{} {number}", self.item(item)),
            Thing::Size { item, number, size } => {
                format!("{} {number}, {}", self.item(item), self.size(size))
            }
            Thing::Overhang { leg } => format!("vuelo del lado {leg}"),
            Thing::Slope { leg } => format!("agua {leg}"),
            Thing::EaveHeight => "alto del alero".to_owned(),
            Thing::RidgeHeight => "alto de la cumbrera".to_owned(),
            Thing::Deck => "base (decking)".to_owned(),
            Thing::DeckSize { size } => match size {
                DeckSizeOf::Gap => "separación entre tablas",
                DeckSizeOf::PlankWidth => "ancho de tabla",
                DeckSizeOf::Thickness => "grueso de la base",
            }
            .to_owned(),
            Thing::Layers => "capas".to_owned(),
            Thing::Change { number } => format!("cambio {number}"),
        }
    }

    fn order_item(&self, item: &OrderItem) -> String {
        match item {
            OrderItem::Field => "shingles",
            OrderItem::Starter => "tira de arranque",
            OrderItem::Cap => "caballete",
            OrderItem::RidgeVent => "ventila de cumbrera",
            OrderItem::ValleyMetal => "lámina para limahoya",
            OrderItem::IceBarrier => "membrana contra hielo y agua",
            OrderItem::Underlayment => "underlayment (fieltro)",
            OrderItem::EaveEdgeMetal => "gotero para alero",
            OrderItem::RakeEdgeMetal => "gotero para orilla inclinada (rake)",
            OrderItem::StepFlashing => "flashing escalonado",
            OrderItem::ApronFlashing => "flashing de frente",
            OrderItem::KickOut => "flashing desviador (kick-out)",
            OrderItem::Nails => "clavos",
            OrderItem::Boot { kind, size } => return self.boots(*kind, size, 1),
            OrderItem::DeckSheet => "hojas de base",
        }
        .to_owned()
    }

    fn boots(&self, kind: BootKind, size: &str, n: u64) -> String {
        let boot = if n == 1 { "bota" } else { "botas" };
        let kind = match kind {
            BootKind::Flue => "tubo de chimenea",
            BootKind::Mast => "mástil",
            BootKind::Pipe => "tubo",
        };
        format!("{boot} para {kind} de {size} pulg")
    }

    fn deck(&self, deck: &DeckName) -> String {
        match deck {
            DeckName::Plank => "tabla".to_owned(),
            DeckName::Sheet => "hoja (triplay u OSB)".to_owned(),
            DeckName::Other(words) => self.quoted(words),
        }
    }

    fn covering(&self, covering: &CoveringName) -> String {
        match covering {
            CoveringName::StripShingle => "shingle de 3 lengüetas".to_owned(),
            CoveringName::LaminatedShingle => "shingle laminado".to_owned(),
            CoveringName::WoodShake => "tejamanil".to_owned(),
            CoveringName::Other(words) => self.quoted(words),
        }
    }

    fn date(&self, date: NaiveDate) -> String {
        // The short months of es-US in CLDR.
        const MONTHS: [&str; 12] = [
            "ene", "feb", "mar", "abr", "may", "jun", "jul", "ago", "sep", "oct", "nov", "dic",
        ];
        let month = MONTHS[date.month0() as usize % 12];
        format!("{} {month} {}", date.day(), date.year())
    }

    fn time_of_day(&self, time: &DateTime<FixedOffset>) -> String {
        let (hour, minute, afternoon) = when::twelve_hours(time);
        format!(
            "{hour}:{minute:02} {}",
            if afternoon { "p. m." } else { "a. m." }
        )
    }

    fn and(&self, parts: &[String]) -> String {
        joined(parts, "y", |last| {
            let is_i = last.starts_with('i') || last.starts_with('í') || last.starts_with("hi");
            (is_i && !last.starts_with("hie")).then_some("e")
        })
    }

    fn or(&self, parts: &[String]) -> String {
        joined(parts, "o", |last| {
            let is_o = last.starts_with('o') || last.starts_with('8') || last.starts_with("ho");
            is_o.then_some("u")
        })
    }

    fn spoken(&self, tape: &Tape) -> String {
        spoken::es::tape(tape.marks())
    }

    fn spoken_degrees(&self, degrees: f64) -> String {
        spoken::es::degrees(degrees)
    }

    fn not_known(&self) -> &'static str {
        "no se sabe"
    }
}

/// `before`: the word in place of `word` where the sound that follows asks for it.
fn joined(
    parts: &[String],
    word: &'static str,
    before: impl Fn(&str) -> Option<&'static str>,
) -> String {
    match parts {
        [] => String::new(),
        [only] => only.clone(),
        [most @ .., last] => {
            let word = before(&last.to_lowercase()).unwrap_or(word);
            format!("{} {word} {last}", most.join(", "))
        }
    }
}

/// The gender, the singular and the plural of a noun.
fn forms(noun: Noun) -> (Gender, &'static str, &'static str) {
    use Gender::{Feminine, Masculine};
    match noun {
        Noun::Square => (Masculine, "cuadro", "cuadros"),
        Noun::Bundle => (Masculine, "bulto", "bultos"),
        Noun::Roll => (Masculine, "rollo", "rollos"),
        Noun::Length => (Masculine, "tramo", "tramos"),
        Noun::Sheet => (Feminine, "hoja", "hojas"),
        Noun::DeckSheet => (Feminine, "hoja de base", "hojas de base"),
        Noun::Box => (Feminine, "caja", "cajas"),
        Noun::Piece => (Feminine, "pieza", "piezas"),
        Noun::Load => (Feminine, "carga", "cargas"),
        Noun::Trip => (Masculine, "viaje", "viajes"),
        Noun::Layer => (Feminine, "capa", "capas"),
        Noun::Leg => (Masculine, "lado", "lados"),
        Noun::Corner => (Feminine, "esquina", "esquinas"),
        Noun::Face => (Feminine, "agua", "aguas"),
        Noun::Edge => (Feminine, "orilla", "orillas"),
        Noun::PitchReading => (Feminine, "pendiente", "pendientes"),
        Noun::Reading => (Feminine, "medida", "medidas"),
        Noun::Photo => (Feminine, "foto", "fotos"),
        Noun::Entry => (Feminine, "anotación", "anotaciones"),
        Noun::Job => (Masculine, "trabajo", "trabajos"),
        Noun::Packet => (Feminine, "carpeta", "carpetas"),
        Noun::Change => (Masculine, "cambio", "cambios"),
        Noun::Device => (Masculine, "aparato", "aparatos"),
        Noun::Copy => (Feminine, "copia", "copias"),
        Noun::OpenItem => (Masculine, "pendiente", "pendientes"),
        Noun::Penetration => (Feminine, "cosa que sobresale", "cosas que sobresalen"),
        Noun::PipeBoot => (Feminine, "bota para tubo", "botas para tubo"),
        Noun::Floor => (Masculine, "piso", "pisos"),
        Noun::Year => (Masculine, "año", "años"),
        Noun::Month => (Masculine, "mes", "meses"),
        Noun::Day => (Masculine, "día", "días"),
        Noun::Hour => (Feminine, "hora", "horas"),
        Noun::Minute => (Masculine, "minuto", "minutos"),
        Noun::Pound => (Feminine, "libra", "libras"),
        Noun::Place => (Masculine, "lugar", "lugares"),
        Noun::Time => (Feminine, "vez", "veces"),
    }
}

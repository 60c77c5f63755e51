use super::figures::Units;
use super::{CoveringName, DeckName, Format, Noun, spoken, when};
use crate::Language;
use chrono::{DateTime, Datelike, FixedOffset, NaiveDate};
use eavebook_core::book::house_side::HouseSide;
use eavebook_core::book::keypad::SlotUnit;
use eavebook_core::book::kinds::{DeckSizeOf, EndKind, ItemKind, SizeOf, Thing};
use eavebook_core::naming::FaceName;
use eavebook_core::roof::EdgeKind;
use eavebook_core::takeoff::{BootKind, OrderItem};
use eavebook_core::units::Tape;

/// American English.
#[derive(Clone, Copy, Debug)]
pub struct En;

impl Format for En {
    fn language(&self) -> Language {
        Language::English
    }

    fn units(&self) -> Units {
        Units {
            foot: "ft",
            feet: "ft",
            inches: "in",
            square_feet: "sq ft",
            pounds: "lb",
            rise_in: "in",
        }
    }

    fn noun(&self, noun: Noun, n: u64) -> &'static str {
        let (one, many) = forms(noun);
        if n == 1 { one } else { many }
    }

    fn side(&self, side: HouseSide) -> &'static str {
        match side {
            HouseSide::Front => "front",
            HouseSide::Right => "right",
            HouseSide::Back => "back",
            HouseSide::Left => "left",
        }
    }

    fn face(&self, face: FaceName) -> String {
        let side = super::capital(self.side(face.side));
        let word = match face.end {
            EndKind::Sloped => side,
            EndKind::Gable => format!("{side} gable"),
            EndKind::Wall => format!("{side} wall"),
        };
        word + &face.suffix()
    }

    fn edge_kind(&self, kind: EdgeKind) -> &'static str {
        match kind {
            EdgeKind::Eave => "eave",
            EdgeKind::Rake => "rake",
            EdgeKind::Ridge => "ridge",
            EdgeKind::Hip => "hip",
            EdgeKind::Valley => "valley",
            EdgeKind::SideWall => "side wall",
            EdgeKind::HeadWall => "head wall",
            EdgeKind::PitchBreak => "pitch break",
        }
    }

    fn item(&self, item: ItemKind) -> &'static str {
        match item {
            ItemKind::Pipe => "pipe",
            ItemKind::Mast => "mast",
            ItemKind::Flue => "flue",
            ItemKind::Chimney => "chimney",
            ItemKind::Skylight => "skylight",
            ItemKind::BoxVent => "box vent",
            ItemKind::Fan => "fan",
            ItemKind::Dish => "dish",
            ItemKind::Solar => "solar panels",
            ItemKind::Other => "other item",
        }
    }

    fn size(&self, size: SizeOf) -> &'static str {
        match size {
            SizeOf::Across => "size",
            SizeOf::Width => "width",
            SizeOf::Depth => "depth",
            SizeOf::Height => "height",
        }
    }

    fn end(&self, end: EndKind) -> &'static str {
        match end {
            EndKind::Sloped => "a slope",
            EndKind::Gable => "a gable",
            EndKind::Wall => "a wall",
        }
    }

    fn slot_unit(&self, unit: SlotUnit) -> &'static str {
        match unit {
            SlotUnit::Feet => "ft",
            SlotUnit::Inches => "in",
            SlotUnit::Tenths => "tenths",
            SlotUnit::Meters => "m",
            SlotUnit::Centimeters => "cm",
        }
    }

    fn even(&self) -> &'static str {
        "even"
    }

    fn thing(&self, thing: &Thing) -> String {
        match *thing {
            Thing::Leg { leg } => format!("leg {leg}"),
            Thing::Tie { from, to } => format!("tie {from}-{to}"),
            Thing::Item { item, number } => format!("{} {number}", self.item(item)),
            Thing::Size { item, number, size } => {
                format!("{} {number} {}", self.item(item), self.size(size))
            }
            Thing::Overhang { leg } => format!("overhang of leg {leg}"),
            Thing::Slope { leg } => format!("face {leg}"),
            Thing::EaveHeight => "eave height".to_owned(),
            Thing::RidgeHeight => "ridge height".to_owned(),
            Thing::Deck => "deck".to_owned(),
            Thing::DeckSize { size } => match size {
                DeckSizeOf::Gap => "gap between planks",
                DeckSizeOf::PlankWidth => "plank width",
                DeckSizeOf::Thickness => "deck thickness",
            }
            .to_owned(),
            Thing::Layers => "layers".to_owned(),
            Thing::Change { number } => format!("change {number}"),
        }
    }

    fn order_item(&self, item: &OrderItem) -> String {
        match item {
            OrderItem::Field => "shingles",
            OrderItem::Starter => "starter",
            OrderItem::Cap => "hip and ridge cap",
            OrderItem::RidgeVent => "ridge vent",
            OrderItem::ValleyMetal => "valley metal",
            OrderItem::IceBarrier => "ice and water barrier",
            OrderItem::Underlayment => "underlayment",
            OrderItem::EaveEdgeMetal => "drip edge for eaves",
            OrderItem::RakeEdgeMetal => "drip edge for rakes",
            OrderItem::StepFlashing => "step flashing",
            OrderItem::ApronFlashing => "apron flashing",
            OrderItem::KickOut => "kick-out flashing",
            OrderItem::Nails => "nails",
            OrderItem::Boot { kind, size } => return self.boots(*kind, size, 1),
            OrderItem::DeckSheet => "deck sheets",
        }
        .to_owned()
    }

    fn boots(&self, kind: BootKind, size: &str, n: u64) -> String {
        let boot = if n == 1 { "boot" } else { "boots" };
        let kind = match kind {
            BootKind::Flue => "flue",
            BootKind::Mast => "mast",
            BootKind::Pipe => "pipe",
        };
        format!("{kind} {boot} ({size} in)")
    }

    fn deck(&self, deck: &DeckName) -> String {
        match deck {
            DeckName::Plank => "plank".to_owned(),
            DeckName::Sheet => "sheet".to_owned(),
            DeckName::Other(words) => self.quoted(words),
        }
    }

    fn covering(&self, covering: &CoveringName) -> String {
        match covering {
            CoveringName::StripShingle => "3-tab shingles".to_owned(),
            CoveringName::LaminatedShingle => "laminated shingles".to_owned(),
            CoveringName::WoodShake => "wood shakes".to_owned(),
            CoveringName::Other(words) => self.quoted(words),
        }
    }

    fn date(&self, date: NaiveDate) -> String {
        const MONTHS: [&str; 12] = [
            "Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec",
        ];
        let month = MONTHS[date.month0() as usize % 12];
        format!("{month} {}, {}", date.day(), date.year())
    }

    fn time_of_day(&self, time: &DateTime<FixedOffset>) -> String {
        let (hour, minute, afternoon) = when::twelve_hours(time);
        format!("{hour}:{minute:02} {}", if afternoon { "pm" } else { "am" })
    }

    fn and(&self, parts: &[String]) -> String {
        joined(parts, "and")
    }

    fn or(&self, parts: &[String]) -> String {
        joined(parts, "or")
    }

    fn spoken(&self, tape: &Tape) -> String {
        spoken::en::tape(tape.marks())
    }

    fn spoken_degrees(&self, degrees: f64) -> String {
        spoken::en::degrees(degrees)
    }

    fn not_known(&self) -> &'static str {
        "not known"
    }
}

fn joined(parts: &[String], word: &str) -> String {
    match parts {
        [] => String::new(),
        [only] => only.clone(),
        [most @ .., last] => format!("{} {word} {last}", most.join(", ")),
    }
}

/// The singular and the plural of a noun.
fn forms(noun: Noun) -> (&'static str, &'static str) {
    match noun {
        Noun::Square => ("square", "squares"),
        Noun::Bundle => ("bundle", "bundles"),
        Noun::Roll => ("roll", "rolls"),
        Noun::Length => ("length", "lengths"),
        Noun::Sheet => ("sheet", "sheets"),
        Noun::DeckSheet => ("deck sheet", "deck sheets"),
        Noun::Box => ("box", "boxes"),
        Noun::Piece => ("piece", "pieces"),
        Noun::Load => ("load", "loads"),
        Noun::Trip => ("trip", "trips"),
        Noun::Layer => ("layer", "layers"),
        Noun::Leg => ("leg", "legs"),
        Noun::Corner => ("corner", "corners"),
        Noun::Face => ("face", "faces"),
        Noun::Edge => ("edge", "edges"),
        Noun::PitchReading => ("pitch", "pitches"),
        Noun::Reading => ("reading", "readings"),
        Noun::Photo => ("photo", "photos"),
        Noun::Entry => ("entry", "entries"),
        Noun::Job => ("job", "jobs"),
        Noun::Packet => ("packet", "packets"),
        Noun::Change => ("change", "changes"),
        Noun::Device => ("device", "devices"),
        Noun::Copy => ("copy", "copies"),
        Noun::OpenItem => ("open item", "open items"),
        Noun::Penetration => ("penetration", "penetrations"),
        Noun::PipeBoot => ("pipe boot", "pipe boots"),
        Noun::Floor => ("floor", "floors"),
        Noun::Year => ("year", "years"),
        Noun::Month => ("month", "months"),
        Noun::Day => ("day", "days"),
        Noun::Hour => ("hour", "hours"),
        Noun::Minute => ("minute", "minutes"),
        Noun::Pound => ("pound", "pounds"),
        Noun::Place => ("place", "places"),
        Noun::Time => ("time", "times"),
    }
}

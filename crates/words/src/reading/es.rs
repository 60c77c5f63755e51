use super::ReadingMessage;
use crate::{Es, Format};
use eavebook_core::book::keypad::SlotUnit;
use eavebook_core::units::Length;

pub(super) fn text(message: &ReadingMessage, f: &Es) -> String {
    match message {
        ReadingMessage::NotADigit { digit } => format!("{digit} no es un dígito. Toque de 0 a 9."),
        ReadingMessage::DigitAfterZero { unit } => {
            format!(
                "Aquí ya hay 0 {}. Quítelo, o siga con la otra unidad.",
                f.slot_unit(*unit)
            )
        }
        ReadingMessage::LongerThanTape {
            typed,
            likely,
            unit,
        } => {
            let unit = f.slot_unit(*unit);
            format!("{typed} {unit} es más que una cinta. ¿Leyó {likely} {unit}?")
        }
        ReadingMessage::OverFoot { inches } => format!(
            "{inches} pulg es más de un pie. ¿Leyó {}?",
            f.length(Length::inches(f64::from(*inches)))
        ),
        ReadingMessage::SlotFull { unit } => {
            format!(
                "Ya no caben más {}. Toque Anotar, o quite una.",
                long(*unit)
            )
        }
        ReadingMessage::NoNumberBefore { unit } => {
            format!("{}? Toque 0 si no hay.", how_many(*unit))
        }
        ReadingMessage::UnitAlreadySet { unit } => format!(
            "Ya puso {} {}. Siga con el resto de la medida.",
            article(*unit),
            long(*unit)
        ),
        ReadingMessage::DigitAfterFraction => {
            "Ya puso la fracción. Toque Anotar, o quite la fracción.".to_owned()
        }
        ReadingMessage::FractionBeforeFeet => {
            "La fracción es de pulgada. Toque primero pies.".to_owned()
        }
        ReadingMessage::NotAQuarter { eighths } => format!(
            "{eighths}/8 no es un cuarto. Para leer octavos, cambie las fracciones en Ajustes."
        ),
        ReadingMessage::TapeWithoutInches => {
            "Esta cinta no tiene pulgadas. Para leer pulgadas, cambie Mi cinta marca en Ajustes."
                .to_owned()
        }
        ReadingMessage::NothingTyped => {
            "Todavía no hay nada escrito. Escriba lo que marca la cinta.".to_owned()
        }
        ReadingMessage::NoUnit { typed, unit } => {
            format!("¿{typed} qué? Toque {}.", f.slot_unit(*unit))
        }
        ReadingMessage::Zero => {
            "0 no es una medida. Quítelo y escriba lo que marca la cinta.".to_owned()
        }
        ReadingMessage::NotATypingKey => {
            "Esta tecla no escribe nada. Toque Anotar para anotar la medida.".to_owned()
        }
        ReadingMessage::DoublePress { digit } => format!("¿Dos veces {digit}?"),
        ReadingMessage::Differ { thing, readings } => {
            let values: Vec<String> = readings.iter().map(|reading| f.reading(reading)).collect();
            let again = if values.len() == 2 {
                "por tercera vez"
            } else {
                "otra vez"
            };
            format!(
                "Las medidas de {} no coinciden: {}. Mida {again} con la cinta.",
                f.thing(thing),
                f.and(&values)
            )
        }
    }
}

/// A unit in a sentence, plural.
const fn long(unit: SlotUnit) -> &'static str {
    match unit {
        SlotUnit::Feet => "pies",
        SlotUnit::Inches => "pulgadas",
        SlotUnit::Tenths => "décimos",
        SlotUnit::Meters => "metros",
        SlotUnit::Centimeters => "centímetros",
    }
}

const fn article(unit: SlotUnit) -> &'static str {
    match unit {
        SlotUnit::Inches => "las",
        SlotUnit::Feet | SlotUnit::Tenths | SlotUnit::Meters | SlotUnit::Centimeters => "los",
    }
}

/// The question for a number of units, without its closing mark.
const fn how_many(unit: SlotUnit) -> &'static str {
    match unit {
        SlotUnit::Feet => "¿Cuántos pies",
        SlotUnit::Inches => "¿Cuántas pulgadas",
        SlotUnit::Tenths => "¿Cuántos décimos",
        SlotUnit::Meters => "¿Cuántos metros",
        SlotUnit::Centimeters => "¿Cuántos centímetros",
    }
}

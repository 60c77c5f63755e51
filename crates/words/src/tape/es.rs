use super::TapeMessage;
use crate::{Es, Format};

pub(super) fn text(message: &TapeMessage, f: &Es) -> String {
    match message {
        TapeMessage::Empty => "No hay ninguna medida escrita. Escriba una con su unidad, por ejemplo 38' 4 1/2\", 38.4 ft o 11.7 m.".to_owned(),
        TapeMessage::TooLong { text } => format!("{} es demasiado largo para una medida. Escriba una sola con su unidad.", f.quoted(text)),
        TapeMessage::UnknownCharacter { text, character } => format!("{} tiene el signo {character}. Escriba una medida como 38' 4 1/2\", 38.4 ft u 11.7 m.", f.quoted(text)),
        TapeMessage::UnknownWord { text, word } => format!("{} tiene la palabra {}, que no es unidad de cinta. Escriba ft, in, m, cm o mm.", f.quoted(text), f.quoted(word)),
        TapeMessage::NoNumber { text } => format!("{} tiene una unidad o un guion sin número. Escriba el número junto, como 38 ft.", f.quoted(text)),
        TapeMessage::NoUnit { text } => format!("{} tiene un número sin unidad. Escriba ft, in, m, cm o mm después.", f.quoted(text)),
        TapeMessage::Negative { text } => format!("{} es menos que cero. Escriba una medida mayor que cero.", f.quoted(text)),
        TapeMessage::InchesOverEleven { text, inches } => format!("{} tiene {inches} pulgadas después de los pies. Escriba de 0 a 11 pulgadas y cuente 12 como un pie.", f.quoted(text)),
        TapeMessage::CentimetersOver99 { text, centimeters } => format!("{} tiene {centimeters} centímetros después de los metros. Escriba enteros de 0 a 99.", f.quoted(text)),
        TapeMessage::FractionNotUnderOne { text, numerator, denominator } => format!("{} tiene la fracción {numerator}/{denominator}. Escriba una menor que 1, como 1/2 o 5/8.", f.quoted(text)),
        TapeMessage::FractionOfOtherUnit { text } => format!("{} tiene una fracción de otra unidad que no es pulgada. Escriba esa unidad con decimales.", f.quoted(text)),
        TapeMessage::DecimalFeetWithInches { text } => format!("{} tiene pies con decimales y también pulgadas. Escriba 38.5 ft o 38' 6\", no los dos.", f.quoted(text)),
        TapeMessage::DecimalWithFraction { text } => format!("{} tiene un decimal y una fracción en un número. Escriba solo uno de los dos.", f.quoted(text)),
        TapeMessage::InchesBeforeFeet { text } => format!("{} tiene las pulgadas antes de los pies. Escriba primero los pies, como 38' 4\".", f.quoted(text)),
        TapeMessage::NotOneLength { text } => format!("{} no es una sola medida. Escriba pies y pulgadas, o pies, o metros.", f.quoted(text)),
        TapeMessage::PointWithoutDigit { text } => format!("{} tiene un punto sin un dígito a cada lado. Escriba 0.5 o 38.4.", f.quoted(text)),
        TapeMessage::Comma { text } => format!("{} tiene una coma. Escriba los decimales con punto y los miles sin signo.", f.quoted(text)),
        TapeMessage::Zero { text } => format!("{} no mide nada. Escriba una medida mayor que 0.", f.quoted(text)),
        TapeMessage::OverLongest { text, longest } => format!("{} es más que {}. Revise los dígitos y la unidad.", f.quoted(text), f.length(*longest)),
        TapeMessage::TooManyDigits { text } => format!("{} tiene más dígitos que una cinta. Escriba solo los que leyó.", f.quoted(text)),
    }
}

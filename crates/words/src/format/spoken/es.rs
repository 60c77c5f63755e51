use super::singly;
use eavebook_core::units::{Inches, Marks};
use rust_decimal::Decimal;

/// An angle to the tenth of a degree: "dos seis punto seis grados".
pub(in crate::format) fn degrees(degrees: f64) -> String {
    format!("{} grados", singly(&format!("{degrees:.1}"), name))
}

/// What a tape said: "cuatro dos pies, siete pulgadas y media".
pub(in crate::format) fn tape(marks: Marks) -> String {
    match marks {
        Marks::FeetInches(feet, inches) if inches == Inches::whole(0) => feet_spoken(feet),
        Marks::FeetInches(feet, inches) => {
            format!("{}, {}", feet_spoken(feet), inches_spoken(inches))
        }
        Marks::Feet(feet) => format!("{} pies", figure(feet)),
        Marks::Inches(inches) => inches_spoken(inches),
        Marks::Meters(amount) => measured(amount, "un metro", "metros"),
        Marks::Centimeters(amount) => measured(amount, "un centímetro", "centímetros"),
        Marks::Millimeters(amount) => measured(amount, "un milímetro", "milímetros"),
    }
}

fn feet_spoken(feet: u32) -> String {
    measured(Decimal::from(feet), "un pie", "pies")
}

fn inches(whole: Decimal) -> String {
    measured(whole, "una pulgada", "pulgadas")
}

/// `one`: the amount 1 with its unit, whose ending goes with it.
fn measured(amount: Decimal, one: &str, many: &str) -> String {
    if amount == Decimal::ONE {
        one.to_owned()
    } else {
        format!("{} {many}", figure(amount))
    }
}

fn inches_spoken(read: Inches) -> String {
    match read {
        Inches::Decimal(amount) => inches(amount),
        Inches::Parts {
            whole,
            numerator: 0,
            denominator: _,
        } => inches(Decimal::from(whole)),
        Inches::Parts {
            whole: 0,
            numerator: 1,
            denominator: 2,
        } => "media pulgada".to_owned(),
        Inches::Parts {
            whole: 0,
            numerator,
            denominator,
        } => format!("{} de pulgada", fraction(numerator, denominator)),
        Inches::Parts {
            whole,
            numerator: 1,
            denominator: 2,
        } => format!("{} y media", inches(Decimal::from(whole))),
        Inches::Parts {
            whole,
            numerator,
            denominator,
        } => format!(
            "{} y {}",
            inches(Decimal::from(whole)),
            fraction(numerator, denominator)
        ),
    }
}

/// `un cuarto`, `tres octavos`, `uno cinco dieciseisavos`; others `cinco sobre nueve`.
fn fraction(numerator: u32, denominator: u32) -> String {
    let part = match denominator {
        2 => "medio",
        4 => "cuarto",
        8 => "octavo",
        16 => "dieciseisavo",
        32 => "treintaidosavo",
        64 => "sesentaicuatroavo",
        _ => {
            let [above, below] = [numerator, denominator].map(|part| figure(Decimal::from(part)));
            return format!("{above} sobre {below}");
        }
    };
    if numerator == 1 {
        format!("un {part}")
    } else {
        format!("{} {part}s", figure(Decimal::from(numerator)))
    }
}

fn figure(number: Decimal) -> String {
    singly(&number.to_string(), name)
}

const fn name(sign: char) -> Option<&'static str> {
    match sign {
        '0' => Some("cero"),
        '1' => Some("uno"),
        '2' => Some("dos"),
        '3' => Some("tres"),
        '4' => Some("cuatro"),
        '5' => Some("cinco"),
        '6' => Some("seis"),
        '7' => Some("siete"),
        '8' => Some("ocho"),
        '9' => Some("nueve"),
        '.' => Some("punto"),
        _ => None,
    }
}

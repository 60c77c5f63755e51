use super::TakeoffMessage;
use crate::{Es, Format};

pub(super) fn text(message: &TakeoffMessage, f: &Es) -> String {
    match message {
        TakeoffMessage::DemoRates => "Estas tarifas son las de muestra del programa: todas las cifras son inventadas. Ponga las suyas antes de que alguien vea un precio.".to_owned(),
        TakeoffMessage::DemoCode => "Estas notas del código son las de muestra del programa. Pregunte en la oficina de permisos qué texto está vigente y anote lo que pide.".to_owned(),
        TakeoffMessage::OverhangNotGiven { building, leg } => format!("No se midió el vuelo del {} de {}. Ahí la membrana contra hielo y agua se cuenta con el vuelo de las tarifas. Mídalo.", f.leg(*leg), f.quoted(building)),
        TakeoffMessage::LayersNotGiven => "Nadie contó las capas. El peso, las cargas y las horas para quitar el techo cubren todos los números de capas probables. Levante una orilla y cuéntelas.".to_owned(),
        TakeoffMessage::Loads => "Los pesos son estimaciones. La carga útil del remolque se toma de una báscula, nunca de la placa. Los bultos apilados cargan el techo en un solo lugar. Si los aguanta lo debe revisar una persona calificada; este programa no lo hace.".to_owned(),
        TakeoffMessage::CodeDateOld { read, on, age } => {
            let age: Vec<String> = age.iter().map(|count| f.count(*count)).collect();
            format!("Las notas del código se leyeron el {}, {} antes del {}. Pregunte en la oficina de permisos qué texto está vigente, y revise también los precios.", f.date(*read), f.and(&age), f.date(*on))
        }
        TakeoffMessage::CodeDateLater { read, on } => format!("Las notas del código se leyeron el {}, después del {}. Revise qué texto estaba vigente ese día.", f.date(*read), f.date(*on)),
        TakeoffMessage::TooFlat { building, leg } => format!("El agua del {} de {} tiene muy poca pendiente para shingles según las notas del código. Su cubierta no se cuenta. Pregunte qué va ahí.", f.leg(*leg), f.quoted(building)),
        TakeoffMessage::TooLarge => "El techo pasa de 1,000,000,000 pies². Revise los largos de sus lados.".to_owned(),
        TakeoffMessage::TooManyCourses { leg } => format!("El agua del {} lleva demasiadas hiladas para contarlas. Ponga una exposición más ancha en las tarifas, o revise los largos de los lados.", f.leg(*leg)),
    }
}

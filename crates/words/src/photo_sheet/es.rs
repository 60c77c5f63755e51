use super::PhotoSheetMessage;
use crate::capital;
use crate::{Es, Format};
use eavebook_core::book::house_side::HouseSide;
use eavebook_core::book::kinds::{PhotoPlace, Thing};

pub(super) fn text(message: &PhotoSheetMessage, f: &Es) -> String {
    match message {
        PhotoSheetMessage::Opening { photos } => format!("{}, en el orden de una vuelta a la casa.", f.count(*photos)),
        PhotoSheetMessage::Copies => "Cada copia se hace solo de la imagen y no lleva datos de la cámara. Un marco vacío marca un lado sin foto.".to_owned(),
        PhotoSheetMessage::NoPhotoOfSide { side } => format!("No hay foto {}.", f.of_side(*side)),
        PhotoSheetMessage::NotPhotographed => "No se vio, o no se fotografió.".to_owned(),
        PhotoSheetMessage::Shows { photo, thing } => format!("Foto {photo}: {}", f.thing(thing)),
        PhotoSheetMessage::ShowsNotRecorded { photo } => format!("Foto {photo}: no se anotó qué muestra"),
        PhotoSheetMessage::NotPlaced { photo } => format!("Foto {photo}. Sin lugar."),
        PhotoSheetMessage::OfPlace { photo, place } => format!("Foto {photo}. {}.", place_name(*place)),
        PhotoSheetMessage::OfPlaceUnconfirmed { photo, place } => format!("Foto {photo}. {}, sin confirmar.", place_name(*place)),
        PhotoSheetMessage::OfThing { photo, side, thing } => format!("Foto {photo}. {}.", thing_on(*side, thing, f)),
        PhotoSheetMessage::OfReading { photo, side, thing, reading } => format!("Foto {photo}. {}: mide {}.", thing_on(*side, thing, f), f.reading(reading)),
        PhotoSheetMessage::OfChange { change } => format!("Fotos del cambio {change}"),
    }
}

fn place_name(place: PhotoPlace) -> &'static str {
    match place {
        PhotoPlace::Front => "Frente de la casa",
        PhotoPlace::Right => "Costado derecho",
        PhotoPlace::Back => "Parte de atrás",
        PhotoPlace::Left => "Costado izquierdo",
        PhotoPlace::Roof => "Techo",
        PhotoPlace::Under => "Debajo del techo",
        PhotoPlace::Ground => "Suelo",
    }
}

fn thing_on(side: Option<HouseSide>, thing: &Thing, f: &Es) -> String {
    match side {
        Some(side) => format!("{}, {}", place_name(side.into()), f.thing(thing)),
        None => capital(&f.thing(thing)),
    }
}

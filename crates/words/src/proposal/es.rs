use super::ProposalMessage;
use super::message::BootCount;
use crate::capital;
use crate::{Es, Format};
use eavebook_core::price::PriceItem;
use eavebook_core::takeoff::OrderItem;

pub(super) fn text(message: &ProposalMessage, f: &Es) -> String {
    match message {
        ProposalMessage::TearOff { layers } => format!(
            "Quitar el material viejo y llevárselo: {}.",
            f.count(*layers)
        ),
        ProposalMessage::TearOffNotCounted => {
            "Quitar el material viejo y llevárselo. No se contaron sus capas.".to_owned()
        }
        ProposalMessage::IceBarrierAtEaves => {
            "Poner membrana contra hielo y agua a lo largo de los aleros.".to_owned()
        }
        ProposalMessage::IceBarrierAtEavesAndValleys => {
            "Poner membrana contra hielo y agua a lo largo de los aleros y en las limahoyas."
                .to_owned()
        }
        ProposalMessage::Underlayment => {
            "Poner underlayment (fieltro) en todo el techo.".to_owned()
        }
        ProposalMessage::Metal { items } => format!("Poner metal nuevo: {}.", item_list(items, f)),
        ProposalMessage::Covering { area, items } => {
            format!("Poner {}: {}.", f.squares(*area), item_list(items, f))
        }
        ProposalMessage::Boots { boots } => format!("Poner botas nuevas: {}.", boot_list(boots, f)),
        ProposalMessage::DeckOverlay => {
            "Poner hojas sobre toda la base: entre sus tablas el clavo no agarra.".to_owned()
        }
        ProposalMessage::CleanUp => {
            "Barrer los clavos del suelo y dejar el lugar como estaba.".to_owned()
        }
        ProposalMessage::PriceRange { low, high } => format!(
            "El precio sigue el área del techo: 8 de cada 10 veces queda entre {} y {}.",
            f.money(*low),
            f.money(*high)
        ),
        ProposalMessage::LayersRange { low, high } => format!(
            "No se contaron las capas: el total queda entre {} y {}. Levante una orilla para contarlas.",
            f.money(*low),
            f.money(*high)
        ),
        ProposalMessage::DeckRange { low, high } => format!(
            "Nadie vio la base: el total es {} si es de hojas y {} si es de tablas que piden hojas encima.",
            f.money(*low),
            f.money(*high)
        ),
        ProposalMessage::NoPriceYet => {
            "Todavía no hay precio. Vea la lista de lo que no se sabe.".to_owned()
        }
        ProposalMessage::ItemNotPriced { item } => {
            format!("{}: no está en este precio.", price_item(item, f))
        }
        ProposalMessage::SquareNotPriced => {
            "El cuadro de techo: no está en este precio.".to_owned()
        }
        ProposalMessage::FaceTooFlat { face, area } => format!(
            "{}, {}: muy plano para shingles, lo que lo cubra no está en este precio.",
            f.face(*face),
            f.area(*area)
        ),
        ProposalMessage::VentsNotPriced { square_inches } => format!(
            "Ventilas cerca de la cumbrera: hacen falta {} pulg² más y no están en este precio.",
            f.number(*square_inches, 0)
        ),
        ProposalMessage::SaddleNotPriced => {
            "Cricket detrás de la chimenea ancha: no está en este precio.".to_owned()
        }
        ProposalMessage::PenetrationsNotPriced { item, count } => format!(
            "{}: contado {count}, no está en este precio.",
            capital(f.item(*item))
        ),
        ProposalMessage::AnythingElse => "Todo lo que no se nombra arriba.".to_owned(),
    }
}

fn price_item(item: &PriceItem, f: &Es) -> String {
    match item {
        PriceItem::Ordered(item) => capital(&f.order_item(item)),
        PriceItem::DeckSheetLabor => "Poner hojas de base".to_owned(),
        PriceItem::Lay => "Poner el techo".to_owned(),
        PriceItem::Strip => "Quitar el techo viejo".to_owned(),
        PriceItem::Tip => "Cuota del tiradero".to_owned(),
        PriceItem::Trip => "Acarreo".to_owned(),
        PriceItem::Fixed(name) => f.quoted(&name.as_str().into()),
    }
}

fn item_list(items: &[OrderItem], f: &Es) -> String {
    let names: Vec<String> = items.iter().map(|item| f.order_item(item)).collect();
    f.and(&names)
}

fn boot_list(boots: &[BootCount], f: &Es) -> String {
    let named = |boot: &BootCount| {
        let count = f.number(boot.count as f64, 0);
        format!("{count} {}", f.boots(boot.kind, &boot.size, boot.count))
    };
    let named: Vec<String> = boots.iter().map(named).collect();
    f.and(&named)
}

use super::ProposalMessage;
use super::message::BootCount;
use crate::capital;
use crate::{En, Format};
use eavebook_core::price::PriceItem;
use eavebook_core::takeoff::OrderItem;

pub(super) fn text(message: &ProposalMessage, f: &En) -> String {
    match message {
        ProposalMessage::TearOff { layers } => format!(
            "Tear off and haul away the old covering: {}.",
            f.count(*layers)
        ),
        ProposalMessage::TearOffNotCounted => {
            "Tear off and haul away the old covering. Its layers are not counted.".to_owned()
        }
        ProposalMessage::IceBarrierAtEaves => {
            "Install ice and water barrier along the eaves.".to_owned()
        }
        ProposalMessage::IceBarrierAtEavesAndValleys => {
            "Install ice and water barrier along the eaves and in the valleys.".to_owned()
        }
        ProposalMessage::Underlayment => "Install underlayment over the whole roof.".to_owned(),
        ProposalMessage::Metal { items } => format!("Install new metal: {}.", item_list(items, f)),
        ProposalMessage::Covering { area, items } => {
            format!("Install {}: {}.", f.squares(*area), item_list(items, f))
        }
        ProposalMessage::Boots { boots } => format!("Install new boots: {}.", boot_list(boots, f)),
        ProposalMessage::DeckOverlay => {
            "Install sheets over the whole deck: nails would miss between its planks.".to_owned()
        }
        ProposalMessage::CleanUp => {
            "Sweep the ground for nails and leave the site as it was found.".to_owned()
        }
        ProposalMessage::PriceRange { low, high } => format!(
            "The price follows the roof area: 8 times in 10 it is between {} and {}.",
            f.money(*low),
            f.money(*high)
        ),
        ProposalMessage::LayersRange { low, high } => format!(
            "The layers are not counted: the total is between {} and {}. Lift an edge to count them.",
            f.money(*low),
            f.money(*high)
        ),
        ProposalMessage::DeckRange { low, high } => format!(
            "Nobody saw the deck: the total is {} if it is sheets and {} if it is planks that need sheets over them.",
            f.money(*low),
            f.money(*high)
        ),
        ProposalMessage::NoPriceYet => {
            "No price yet. See the list of what is not known.".to_owned()
        }
        ProposalMessage::ItemNotPriced { item } => {
            format!("{}: not in this price.", price_item(item, f))
        }
        ProposalMessage::SquareNotPriced => "The square of roof: not in this price.".to_owned(),
        ProposalMessage::FaceTooFlat { face, area } => format!(
            "{}, {}: too flat for shingles, its covering is not in this price.",
            f.face(*face),
            f.area(*area)
        ),
        ProposalMessage::VentsNotPriced { square_inches } => format!(
            "Vents near the ridge: {} sq in more are needed and are not in this price.",
            f.number(*square_inches, 0)
        ),
        ProposalMessage::SaddleNotPriced => {
            "Saddle behind the wide chimney: not in this price.".to_owned()
        }
        ProposalMessage::PenetrationsNotPriced { item, count } => format!(
            "{}: {count} counted, not in this price.",
            capital(f.item(*item))
        ),
        ProposalMessage::AnythingElse => "Anything not named above.".to_owned(),
    }
}

fn price_item(item: &PriceItem, f: &En) -> String {
    match item {
        PriceItem::Ordered(item) => capital(&f.order_item(item)),
        PriceItem::DeckSheetLabor => "Laying deck sheets".to_owned(),
        PriceItem::Lay => "Laying".to_owned(),
        PriceItem::Strip => "Tear-off".to_owned(),
        PriceItem::Tip => "Dump fee".to_owned(),
        PriceItem::Trip => "Haul".to_owned(),
        PriceItem::Fixed(name) => f.quoted(&name.as_str().into()),
    }
}

fn item_list(items: &[OrderItem], f: &En) -> String {
    let names: Vec<String> = items.iter().map(|item| f.order_item(item)).collect();
    f.and(&names)
}

fn boot_list(boots: &[BootCount], f: &En) -> String {
    let named = |boot: &BootCount| {
        let count = f.number(boot.count as f64, 0);
        format!("{count} {}", f.boots(boot.kind, &boot.size, boot.count))
    };
    let named: Vec<String> = boots.iter().map(named).collect();
    f.and(&named)
}

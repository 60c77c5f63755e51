//! What stands on an order list, and how it is counted and packed.

use crate::settings::BootKind;
use serde::{Serialize, Serializer};
use std::fmt;

/// What stands on an order list, in the order in which it stands there.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum OrderItem {
    /// Pieces that cover the roof.
    Field,
    /// The strip under the lowest course.
    Starter,
    /// Pieces over hips and ridges.
    Cap,
    /// Vents along ridges.
    RidgeVent,
    /// Metal in open valleys.
    ValleyMetal,
    /// The barrier against ice.
    IceBarrier,
    /// Underlayment.
    Underlayment,
    /// Metal at eaves.
    EaveEdgeMetal,
    /// Metal at rakes.
    RakeEdgeMetal,
    /// Flashing course by course.
    StepFlashing,
    /// Flashing along the lower and upper side of an opening and under a head wall.
    ApronFlashing,
    /// Flashing at the foot of a side wall.
    KickOut,
    /// Nails.
    Nails,
    /// The boot of a pipe, mast or flue.
    Boot {
        /// Of what.
        kind: BootKind,
        /// Inches as text: `1.5`, `3`.
        size: String,
    },
    /// Sheets for the deck.
    DeckSheet,
}

impl fmt::Display for OrderItem {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        out.write_str(match self {
            OrderItem::Field => "field",
            OrderItem::Starter => "starter",
            OrderItem::Cap => "cap",
            OrderItem::RidgeVent => "ridge vent",
            OrderItem::ValleyMetal => "valley metal",
            OrderItem::IceBarrier => "ice barrier",
            OrderItem::Underlayment => "underlayment",
            OrderItem::EaveEdgeMetal => "eave edge metal",
            OrderItem::RakeEdgeMetal => "rake edge metal",
            OrderItem::StepFlashing => "step flashing",
            OrderItem::ApronFlashing => "apron flashing",
            OrderItem::KickOut => "kick-out",
            OrderItem::Nails => "nails",
            OrderItem::Boot { kind, size } => return write!(out, "{} boot {size} in", kind.name()),
            OrderItem::DeckSheet => "deck sheet",
        })
    }
}

impl Serialize for OrderItem {
    fn serialize<S: Serializer>(&self, into: S) -> Result<S::Ok, S::Error> {
        into.collect_str(self)
    }
}

/// In what something is bought.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "lowercase")]
pub enum Pack {
    /// A pack.
    Pack,
    /// A stick.
    Stick,
    /// A roll.
    Roll,
    /// A box.
    Box,
    /// A sheet.
    Sheet,
    /// One by one.
    Piece,
}

impl Pack {
    /// As it is written: `roll`.
    #[must_use]
    pub fn name(self) -> &'static str {
        match self {
            Pack::Pack => "pack",
            Pack::Stick => "stick",
            Pack::Roll => "roll",
            Pack::Box => "box",
            Pack::Sheet => "sheet",
            Pack::Piece => "piece",
        }
    }
}

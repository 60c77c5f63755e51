//! What was done, in order, and what Undo and Redo would take back on one device.
//!
//! Undo and redo are entries like any other, so they work with no network and after a restart.

use super::fold::FieldBook;
use super::kinds::Kind;
use uuid::Uuid;

/// One entry of a known kind.
#[derive(Clone, Debug, PartialEq)]
pub struct Act {
    /// Its entry.
    pub entry: Uuid,
    /// Which device.
    pub device: Uuid,
    /// Who.
    pub author: String,
    /// Local time with offset, RFC 3339.
    pub local_time: String,
    /// Entries that it takes out of use while it is in force.
    pub supersedes: Vec<Uuid>,
    /// Nothing in force supersedes it.
    pub in_force: bool,
    /// What was booked.
    pub kind: Kind,
}

/// What an act is to Undo.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Part {
    /// Can be taken back.
    Step,
    /// Takes back.
    Undo,
    /// A redo; an answer to a read-back; the start of the job: no step of its own.
    Aside,
}

impl Act {
    fn part(&self) -> Part {
        match self.kind {
            Kind::Reading(_)
            | Kind::Corner(_)
            | Kind::CannotGet(_)
            | Kind::LegEnd(_)
            | Kind::Pitch(_)
            | Kind::Penetration(_)
            | Kind::Covering(_)
            | Kind::Deck(_)
            | Kind::RoofObserved(_)
            | Kind::Rate(_)
            | Kind::Visit(_)
            | Kind::Change(_)
            | Kind::Photo(_)
            | Kind::Clip(_)
            | Kind::PhotoFacts(_)
            | Kind::SettledAtDesk(_)
            | Kind::Strike(_) => Part::Step,
            Kind::Undo(_) => Part::Undo,
            Kind::JobStarted(_)
            | Kind::ReadBackRight(_)
            | Kind::Redo(_)
            | Kind::PacketFrozen(_)
            | Kind::PacketSent(_) => Part::Aside,
        }
    }
}

impl FieldBook {
    /// The act with this entry.
    pub fn act(&self, entry: Uuid) -> Option<&Act> {
        self.acts.iter().find(|act| act.entry == entry)
    }

    /// The last step of a device that still stands: the one that Undo takes back. The undo entry
    /// supersedes it.
    pub fn undo_of(&self, device: Uuid) -> Option<&Act> {
        self.acts
            .iter()
            .rev()
            .find(|act| act.device == device && act.in_force && act.part() == Part::Step)
    }

    /// The last undo of a device that still stands and after which it took no new step: the one
    /// that Redo takes back. The redo entry supersedes it.
    pub fn redo_of(&self, device: Uuid) -> Option<&Act> {
        self.acts
            .iter()
            .rev()
            .filter(|act| act.device == device)
            .take_while(|act| act.part() != Part::Step)
            .find(|act| act.in_force && act.part() == Part::Undo)
    }

    /// The act that a standing undo has taken back, to name it.
    pub fn undone_by(&self, undo: &Act) -> Option<&Act> {
        undo.supersedes.iter().find_map(|id| self.act(*id))
    }
}

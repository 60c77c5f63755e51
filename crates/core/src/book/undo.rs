//! Which entry Undo and Redo take back on a device.
//!
//! Undo and redo are entries like any other, so they work with no network and after a restart.

use super::acts::Act;
use super::fold::FieldBook;
use super::kinds::UndoRole;
use uuid::Uuid;

impl FieldBook {
    /// Returns the act of an entry; `None` if the entry is unknown.
    #[must_use]
    pub fn act(&self, entry: Uuid) -> Option<&Act> {
        self.acts.iter().find(|act| act.entry == entry)
    }

    /// Returns the last step of a device that is in force: the one that Undo takes back. The undo
    /// entry supersedes it.
    #[must_use]
    pub fn undo_of(&self, device: Uuid) -> Option<&Act> {
        self.acts.iter().rev().find(|act| {
            act.device == device && act.in_force && act.kind.undo_role() == UndoRole::Step
        })
    }

    /// Returns the last undo of a device that is in force and was followed by no new step: the one
    /// that Redo takes back. The redo entry supersedes it.
    #[must_use]
    pub fn redo_of(&self, device: Uuid) -> Option<&Act> {
        self.acts
            .iter()
            .rev()
            .filter(|act| act.device == device)
            .take_while(|act| act.kind.undo_role() != UndoRole::Step)
            .find(|act| act.in_force && act.kind.undo_role() == UndoRole::Undo)
    }

    /// Returns the act that an undo has taken back; `None` if its entry is not on this device yet.
    #[must_use]
    pub fn undone_by(&self, undo: &Act) -> Option<&Act> {
        undo.supersedes.iter().find_map(|id| self.act(*id))
    }
}

//! The story of a subject: every entry about it, and every entry that struck, confirmed or restored
//! one of those, in display order. Struck readings are included.

use super::acts::Act;
use super::fold::FieldBook;
use super::kinds::{Group, Subject};
use std::collections::BTreeSet;
use uuid::Uuid;

impl FieldBook {
    /// Returns every entry of a subject's story, in display order: readings, read-backs, photos,
    /// strikes, undos.
    #[must_use]
    pub fn story<'a>(&'a self, subject: &Subject) -> Vec<&'a Act> {
        let mut story: BTreeSet<Uuid> = self.entries_about(subject).collect();
        // With a wrong clock a strike can precede its reading in display order, so the links are
        // followed until no new entry is found.
        loop {
            let before = story.len();
            for act in &self.acts {
                let belongs = match act.kind.group() {
                    Group::Answer => {
                        let answered = act.kind.refs();
                        let mut answered = answered.iter().filter_map(|id| id.parse().ok());
                        answered.any(|entry: Uuid| story.contains(&entry))
                    }
                    Group::Retraction => act.supersedes.iter().any(|entry| story.contains(entry)),
                    Group::Fact | Group::PacketNote => false,
                };
                if belongs {
                    story.insert(act.entry);
                }
            }
            if story.len() == before {
                break;
            }
        }
        self.acts
            .iter()
            .filter(|act| story.contains(&act.entry))
            .collect()
    }

    /// Returns the entries that a new entry about a subject supersedes: all earlier ones, since
    /// superseding only the last would put the one before it in force again. Empty for
    /// measurements, which are all kept.
    #[must_use]
    pub fn replaced_by_new(&self, subject: &Subject) -> Vec<Uuid> {
        if subject.keeps_last_only() {
            self.entries_about(subject).collect()
        } else {
            Vec::new()
        }
    }

    fn entries_about(&self, subject: &Subject) -> impl Iterator<Item = Uuid> {
        let about = self
            .acts
            .iter()
            .filter(|act| act.kind.subject().as_ref() == Some(subject));
        about.map(|act| act.entry)
    }
}

//! Labels: buttons, headings, states and units, without arguments.
//!
//! A group lists its labels in `label/<group>.rs`; `label/en/<group>.rs` and `label/es/<group>.rs`
//! hold their texts. The page gets all of them as one generated table.

pub mod packet;
pub mod paper;
pub mod state;

mod en;
mod es;

use crate::{Kind, Language};

/// Makes [`Label`] from its groups: one line a group.
macro_rules! groups {
    ($( $(#[$doc:meta])* $group:ident ( $type:path ) ; )+) => {
        /// A label, by the group to which it belongs.
        #[derive(Clone, Copy, Debug, PartialEq, Eq)]
        pub enum Label {
            $( $(#[$doc])* $group($type), )+
        }

        $(
            impl From<$type> for Label {
                fn from(label: $type) -> Label {
                    Label::$group(label)
                }
            }
        )+

        impl Label {
            /// Every label, group by group.
            #[must_use]
            pub fn all() -> Vec<Label> {
                let mut all = Vec::new();
                $( all.extend(<$type>::ALL.iter().copied().map(Label::$group)); )+
                all
            }

            /// The id of this label: `frame.undo`.
            #[must_use]
            pub fn id(self) -> String {
                match self { $( Label::$group(label) => label.id(), )+ }
            }

            /// This label in a language.
            #[must_use]
            pub const fn text(self, language: Language) -> &'static str {
                match self { $( Label::$group(label) => label.text(language), )+ }
            }

            /// Whether it is a title.
            #[must_use]
            pub const fn kind(self) -> Kind {
                match self { $( Label::$group(label) => label.kind(), )+ }
            }

            /// It may read alike in both languages.
            #[must_use]
            pub const fn may_be_same(self) -> bool {
                match self { $( Label::$group(label) => label.may_be_same(), )+ }
            }
        }
    };
}

groups! {
    /// Headings of the start page of a packet and titles of its files.
    Packet(packet::PacketLabel);
    /// Titles, headings, table heads, cells and fill-in lines of papers.
    Paper(paper::PaperLabel);
    /// How well a thing is known.
    State(state::StateLabel);
}

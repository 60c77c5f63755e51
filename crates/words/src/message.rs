use crate::Language;

/// Makes [`Message`] from its areas: one line an area.
macro_rules! areas {
    ($( $(#[$doc:meta])* $area:ident ( $type:path ) ; )+) => {
        /// A sentence for people, by the area to which it belongs.
        #[derive(Clone, Debug, PartialEq)]
        pub enum Message {
            $( $(#[$doc])* $area($type), )+
        }

        $(
            impl From<$type> for Message {
                fn from(message: $type) -> Message {
                    Message::$area(message)
                }
            }
        )+

        impl Message {
            /// The id of this message: `closure.gap`.
            #[must_use]
            pub fn id(&self) -> String {
                match self {
                    $( Message::$area(message) => message.id(), )+
                }
            }

            /// This message in a language.
            #[must_use]
            pub fn text(&self, language: Language) -> String {
                match self {
                    $( Message::$area(message) => message.text(language), )+
                }
            }

            /// One sample or more of every message.
            #[must_use]
            pub fn samples() -> Vec<Message> {
                let mut samples = Vec::new();
                $( samples.extend(<$type>::samples().into_iter().map(Message::$area)); )+
                samples
            }
        }
    };
}

areas! {
    /// Whether the outline comes back to its start, and what to read again.
    Closure(crate::closure::ClosureMessage);
}

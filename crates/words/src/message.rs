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
    /// Sentences of more than one paper.
    Paper(crate::paper::PaperMessage);
    /// Captions of photos and sentences of the photo sheet.
    PhotoSheet(crate::photo_sheet::PhotoSheetMessage);
    /// Scope of work, price and what the price leaves out.
    Proposal(crate::proposal::ProposalMessage);
    /// Sentences of the order list and of the tear-off.
    Order(crate::order::OrderMessage);
    /// Sentences of the permit sheet and the notes of a code profile.
    Permit(crate::permit::PermitMessage);
    /// How the figures of a job came out of its readings.
    Story(crate::story::StoryMessage);
    /// What was found once the old roof was off, and who agreed.
    ChangePaper(crate::change_paper::ChangePaperMessage);
    /// Things that differ from the version before, and what each version has.
    Difference(crate::difference::DifferenceMessage);
    /// What is not known of a house.
    NotKnown(crate::not_known::NotKnownMessage);
    /// The usual cautions of roof work, as papers print them.
    Safety(crate::safety::SafetyMessage);
    /// What a packet lacks, why it was not made, and its start page.
    Packet(crate::packet::PacketMessage);
    /// Why a file is not a whole packet.
    PacketCheck(crate::packet_check::PacketCheckMessage);
    /// What to check before a takeoff is used, and why a roof has none.
    Takeoff(crate::takeoff::TakeoffMessage);
    /// What becomes of a picture file.
    Picture(crate::picture::PictureMessage);
    /// Why a text is not a reading of a tape.
    Tape(crate::tape::TapeMessage);
    /// Why a key of the keypad changed nothing, and what the keypad asks.
    Reading(crate::reading::ReadingMessage);
    /// Why a record is not a valid entry.
    Entry(crate::entry::EntryMessage);
}

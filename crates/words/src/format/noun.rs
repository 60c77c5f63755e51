use eavebook_core::takeoff::Pack;

/// The gender of a Spanish noun.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Gender {
    /// `el bulto`.
    Masculine,
    /// `la hoja`.
    Feminine,
}

/// Makes [`Noun`] and the list of all of them.
macro_rules! nouns {
    ($( $(#[$doc:meta])* $noun:ident ; )+) => {
        /// A thing that is counted: its forms are in `format/en.rs` and `format/es.rs`.
        #[derive(Clone, Copy, Debug, PartialEq, Eq)]
        pub enum Noun {
            $( $(#[$doc])* $noun, )+
        }

        impl Noun {
            /// Every noun.
            pub const ALL: &'static [Noun] = &[ $( Noun::$noun, )+ ];

            /// The id of this noun: `noun.bundle`.
            #[must_use]
            pub fn id(self) -> String {
                match self {
                    $( Noun::$noun => crate::list::id("noun", stringify!($noun)), )+
                }
            }
        }
    };
}

nouns! {
    /// 100 sq ft of roof.
    Square;
    /// A bundle of shingles.
    Bundle;
    /// A roll of membrane or felt.
    Roll;
    /// A length of metal.
    Length;
    /// A sheet as bought.
    Sheet;
    /// A sheet of deck that is replaced.
    DeckSheet;
    /// A box of nails.
    Box;
    /// A piece.
    Piece;
    /// A load of tear-off.
    Load;
    /// A trip with a load.
    Trip;
    /// A layer of covering.
    Layer;
    /// A leg of the outline.
    Leg;
    /// A corner of the outline.
    Corner;
    /// A face of the roof.
    Face;
    /// An edge of the roof.
    Edge;
    /// A pitch of a face.
    PitchReading;
    /// A taped value.
    Reading;
    /// A photo.
    Photo;
    /// An entry of a field book.
    Entry;
    /// A job.
    Job;
    /// A packet of papers.
    Packet;
    /// A change found at tear-off.
    Change;
    /// A device.
    Device;
    /// A copy of a field book.
    Copy;
    /// Something left open.
    OpenItem;
    /// A penetration of one kind.
    Penetration;
    /// A pipe boot.
    PipeBoot;
    /// A level of a house.
    Floor;
    /// A year of age.
    Year;
    /// A month of age.
    Month;
    /// A day of work.
    Day;
    /// An hour of work.
    Hour;
    /// A minute.
    Minute;
    /// A pound of weight.
    Pound;
    /// A place where something was looked at.
    Place;
    /// A count of times.
    Time;
}

impl From<Pack> for Noun {
    fn from(pack: Pack) -> Noun {
        match pack {
            Pack::Pack => Noun::Bundle,
            Pack::Stick => Noun::Length,
            Pack::Roll => Noun::Roll,
            Pack::Box => Noun::Box,
            Pack::Sheet => Noun::Sheet,
            Pack::Piece => Noun::Piece,
        }
    }
}

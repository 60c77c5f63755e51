//! Why something was not done, as a sentence for a person.

use crate::names;
use eavebook_core::book::edition::Edition;
use eavebook_core::settings::SettingFault;
use eavebook_core::sight::SightError;
use eavebook_packet::{NotMade, VerifyError};
use eavebook_store::{BackupError, StoreError};
use eavebook_sync::PairError;

/// Why a request changed nothing. Its text names the thing and the remedy.
#[derive(Debug, thiserror::Error)]
pub enum Refusal {
    /// The book could not be read or written.
    #[error("{}", capital_and_stop(.0))]
    Store(#[from] StoreError),
    /// The request cannot be done.
    #[error("{0}")]
    Ask(#[from] RequestRefusal),
    /// The rates do not take it.
    #[error("{0}.")]
    Rate(#[from] SettingFault),
    /// No packet was made.
    #[error("{0}")]
    Packet(#[from] NotMade),
    /// No hub was joined.
    #[error("{}.", names::capital(&.0.to_string()))]
    Pair(#[from] PairError),
    /// A file carried by hand was not taken in.
    #[error("{}", capital_and_stop(.0))]
    ImportError(#[from] ImportError),
    /// No copy of the book was made.
    #[error("{}", capital_and_stop(.0))]
    NotCopied(#[from] BackupError),
    /// The hub of this machine let nobody in.
    #[error("{}.", names::capital(.0))]
    NotInvited(String),
}

/// A request that cannot be done.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
pub enum RequestRefusal {
    /// No entry belongs to this job.
    #[error("This book has no such job. Go to Today and open one of those there.")]
    NoJob,
    /// A job without a place.
    #[error("A job needs its address. Type the street and the number.")]
    NoAddress,
    /// An address that is no address.
    #[error("An address has at most 200 letters. Type the street and the number.")]
    LongAddress,
    /// The keypad is not open.
    #[error("The keypad is put away. Open it with Read.")]
    PadAway,
    /// A press came before the one before it.
    #[error("A key before this one did not arrive. Look at the slots and type on from there.")]
    PressOutOfOrder,
    /// No such leg.
    #[error("There is no leg {leg}. Legs count from 1, at most one past the last.")]
    NoLeg {
        /// What was asked for.
        leg: u32,
    },
    /// No such tie.
    #[error("Tie {from}-{to} joins no two corners of this outline. Corners count from 1.")]
    NoTie {
        /// One corner.
        from: u32,
        /// The other corner.
        to: u32,
    },
    /// No such item.
    #[error("There is no {name} on this roof. Add it on the face where it stands.")]
    NoItem {
        /// What was asked for.
        name: String,
    },
    /// A thing that no tape reads.
    #[error("{title} is seen, not taped. Say what was seen in its own leaf under Items.")]
    NotTaped {
        /// Which thing.
        title: String,
    },
    /// Layers that are none.
    #[error("{said} is no count of layers. Say 1 to 4 as seen at a lifted edge, or leave it open.")]
    NoLayers {
        /// What was said.
        said: u32,
    },
    /// A change without a face.
    #[error("Under which face? Choose it, then book.")]
    NoFace,
    /// A change without a count.
    #[error("{said} is no count of sheets. Count them with one more and one less, 1 to 999.")]
    NoSheets {
        /// What was said.
        said: u32,
    },
    /// A covering without a name.
    #[error("A kind of covering has 1 to 60 letters. Choose one of those in the rates.")]
    NoCovering,
    /// The entry is not in this job.
    #[error("This reading is not in this job. Open its story again and choose there.")]
    NoEntry,
    /// The entry cannot be struck.
    #[error("Only what was read, seen, photographed or priced can be struck.")]
    NotStruck,
    /// Something else was done in between.
    #[error("Something else was done since. Look at what {act} names now.")]
    NotNext {
        /// Undo or Redo.
        act: &'static str,
    },
    /// It was read.
    #[error("{title} has a reading. Strike the reading first, if it is wrong.")]
    IsRead {
        /// Which thing.
        title: String,
    },
    /// A slope that is none.
    #[error("{said} is no slope of a roof. Read it again: {remedy}.")]
    NoSlope {
        /// What was said.
        said: String,
        /// What would be one.
        remedy: &'static str,
    },
    /// A slope taken over from itself or from nowhere.
    #[error("A face takes its pitch over from another face of this roof. Choose one that has one.")]
    NoOtherSlope,
    /// A phone that does not report its tilt.
    #[error(
        "This phone does not report its tilt. Read the pitch by level and tape, or record it as not got."
    )]
    NoTilt,
    /// Marks on a photo that tell no pitch.
    #[error("{}.", names::capital(&.0.to_string()))]
    SightError(#[from] SightError),
    /// No gable end beside a face.
    #[error(
        "Which end of this face is a gable? Say so at that face first: its leg is the width of what \
         is marked."
    )]
    NoGableBeside,
    /// A gable end whose leg has no length.
    #[error("Leg {leg} under this gable has no length yet. Read it first.")]
    NoGableWidth {
        /// The leg.
        leg: u32,
    },
    /// A heading that is none.
    #[error("A compass reads 0 to 360 degrees. Stand before the front and tap again.")]
    NoHeading,
    /// Somebody without a name.
    #[error("Who is it? Write a name, or what they are: tenant, owner, neighbor.")]
    NoName,
    /// A note too long to be read again.
    #[error("A note has at most 400 letters. Say it shorter, or in two.")]
    LongNote,
    /// A turn that is none.
    #[error("{degrees}° is no corner. Give between -135 and 135, toward the building positive.")]
    NoTurn {
        /// What was said.
        degrees: f64,
    },
    /// A file that is no photo.
    #[error("This file is no photo that can be kept. Bring a JPEG, PNG, WebP or HEIC picture.")]
    NoPhoto,
    /// A photo that is not in this job.
    #[error("This photo is not in this job. Open the walk-round again and choose there.")]
    NoSuchPhoto,
    /// A photo too large.
    #[error("This photo has {mib} MiB; up to 64 MiB are kept. Take it smaller, or crop it.")]
    PhotoTooLarge {
        /// Its size, rounded up.
        mib: usize,
    },
    /// A photo that broke off.
    #[error("The photo broke off on its way, and nothing was kept. Send it again.")]
    PhotoCutOff,
    /// A photo without a square on it.
    #[error(
        "No square is found on this photo. Hold the camera straight before it, so near that it fills \
         half the picture, and take it again; or type the line below the square."
    )]
    NoSquare,
    /// A square that is no hub's.
    #[error(
        "The square on this photo is no link of a hub. Take the one that the other machine shows in \
         its Settings, by Let one more device join."
    )]
    OtherSquare,
    /// A picture that cannot be looked at.
    #[error(
        "This picture cannot be looked at here. Take it again as a JPEG, or type the line below the \
         square."
    )]
    SquareNotSeen,
    /// A file carried by hand that broke off.
    #[error("The file broke off on its way, and nothing was brought. Bring it in again.")]
    FileCutOff,
    /// A key that does nothing here, with the sentence of the keypad.
    #[error("{en}")]
    Key {
        /// Names the sentence.
        code: String,
        /// The sentence.
        en: String,
    },
    /// No job in the whole book.
    #[error("This book holds no job yet. Start one, or book the pretend house with demo.")]
    NoJobs,
    /// What was to be a recording is none.
    #[error("This is no sound that can be kept. Say it once more, or write it down.")]
    NoSound,
    /// No packet of that id, or none at all.
    #[error("There is no packet to send yet. Make one first.")]
    NoPacket,
    /// Nobody was named.
    #[error("To whom? Write a name or an address, then Send.")]
    ToWhom,
    /// A sending that was never begun.
    #[error("That sending is not in this job. Send the packet again.")]
    NoSending,
    /// An old version that was never made.
    #[error(
        "No version {version} of the {edition}'s packet was made of this job. Leave the version \
         away to make the next one."
    )]
    NoVersion {
        /// For whom.
        edition: Edition,
        /// Which.
        version: u32,
    },
    /// An old version whose entries are not to be found again.
    #[error(
        "What version {version} of the {edition}'s packet was made of is not all in this book. \
         Fetch it from the device that made it, or make a new one."
    )]
    VersionLost {
        /// For whom.
        edition: Edition,
        /// Which.
        version: u32,
    },
    /// An old version that this program sets otherwise.
    #[error(
        "Version {version} was made with {made_with} and would come out otherwise now. Nothing was \
         kept; make it there, or make a new one here."
    )]
    MadeOtherwise {
        /// Which.
        version: u32,
        /// The program that made it.
        made_with: String,
    },
    /// The program failed at it.
    #[error(
        "Something went wrong in the program, and nothing of this was booked. Do it again; all that \
         was booked before is kept."
    )]
    BrokeOff,
}

/// Why a file carried by hand was not imported.
#[derive(Debug, thiserror::Error)]
pub enum ImportError {
    /// A backup.
    #[error(transparent)]
    Backup(#[from] BackupError),
    /// A packet.
    #[error("nothing was brought: {0}")]
    Packet(#[from] VerifyError),
    /// The store.
    #[error(transparent)]
    Store(#[from] StoreError),
}

impl ImportError {
    /// The same of a file that came without a name.
    #[must_use]
    pub fn of_this_file(self) -> ImportError {
        match self {
            ImportError::Backup(BackupError::Damaged { what, .. }) => {
                let file = "this file".to_owned();
                ImportError::Backup(BackupError::Damaged { file, what })
            }
            other @ (ImportError::Backup(_) | ImportError::Packet(_) | ImportError::Store(_)) => {
                other
            }
        }
    }
}

/// A photo of this length is not kept.
#[must_use]
pub fn too_large(bytes: usize) -> RequestRefusal {
    RequestRefusal::PhotoTooLarge {
        mib: bytes.div_ceil(1024 * 1024),
    }
}

/// What the store or the rates say, as a sentence with a capital and a stop.
fn capital_and_stop(why: &impl std::fmt::Display) -> String {
    let said = names::capital(&why.to_string());
    format!("{said}.")
}

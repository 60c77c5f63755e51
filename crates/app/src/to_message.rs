//! Refusals as a screen shows them.

use crate::refusal::{Refusal, RequestRefusal};
use crate::reply::Reply;
use crate::sentence::Sentence;

/// The reply, or the refusal as a reply.
#[must_use]
pub fn reply_or_refusal(result: Result<Reply, Refusal>) -> Reply {
    result.unwrap_or_else(|refusal| Reply::Refused(refusal.said()))
}

impl Refusal {
    /// As a screen is told.
    #[must_use]
    pub fn said(&self) -> Sentence {
        let code = match self {
            Refusal::Store(why) => why.code(),
            Refusal::Rate(_) => "rate_refused",
            Refusal::Ask(why) => return why.said(),
            Refusal::Packet(_) => "packet_not_made",
            Refusal::Pair(_) => "not_joined",
            Refusal::ImportError(_) => "not_brought",
            Refusal::NotCopied(_) => "not_copied",
            Refusal::NotInvited(_) => "not_invited",
        };
        Sentence {
            code: code.to_owned(),
            en: self.to_string(),
        }
    }
}

impl RequestRefusal {
    /// As a screen is told.
    #[must_use]
    pub fn said(&self) -> Sentence {
        let code = match self {
            RequestRefusal::NoJob => "no_job",
            RequestRefusal::NoAddress => "no_address",
            RequestRefusal::LongAddress => "long_address",
            RequestRefusal::PadAway => "pad_away",
            RequestRefusal::PressOutOfOrder => "press_out_of_order",
            RequestRefusal::NoLeg { .. } => "no_leg",
            RequestRefusal::NoTie { .. } => "no_tie",
            RequestRefusal::NoItem { .. } => "no_item",
            RequestRefusal::NotTaped { .. } => "not_taped",
            RequestRefusal::NoFace => "no_face",
            RequestRefusal::NoSheets { .. } => "no_sheets",
            RequestRefusal::NoLayers { .. } => "no_layers",
            RequestRefusal::NoCovering => "no_covering",
            RequestRefusal::NoEntry => "no_entry",
            RequestRefusal::NotStruck => "not_struck",
            RequestRefusal::NotNext { .. } => "not_next",
            RequestRefusal::IsRead { .. } => "is_read",
            RequestRefusal::NoSlope { .. } => "no_slope",
            RequestRefusal::NoOtherSlope => "no_other_slope",
            RequestRefusal::NoTilt => "no_tilt",
            RequestRefusal::SightError(_) => "no_sight",
            RequestRefusal::NoGableBeside => "no_gable_beside",
            RequestRefusal::NoGableWidth { .. } => "no_gable_width",
            RequestRefusal::NoHeading => "no_heading",
            RequestRefusal::NoName => "no_name",
            RequestRefusal::LongNote => "long_note",
            RequestRefusal::NoTurn { .. } => "no_turn",
            RequestRefusal::NoPhoto => "no_photo_file",
            RequestRefusal::NoSuchPhoto => "no_such_photo",
            RequestRefusal::PhotoTooLarge { .. } => "photo_too_large",
            RequestRefusal::PhotoCutOff => "photo_cut_off",
            RequestRefusal::FileCutOff => "file_cut_off",
            RequestRefusal::NoSquare => "no_square",
            RequestRefusal::OtherSquare => "other_square",
            RequestRefusal::SquareNotSeen => "square_not_seen",
            RequestRefusal::Key { code, .. } => code,
            RequestRefusal::NoJobs => "no_jobs",
            RequestRefusal::NoSound => "no_sound",
            RequestRefusal::NoPacket => "no_packet",
            RequestRefusal::ToWhom => "to_whom",
            RequestRefusal::NoSending => "no_sending",
            RequestRefusal::NoVersion { .. } => "no_version",
            RequestRefusal::VersionLost { .. } => "version_lost",
            RequestRefusal::MadeOtherwise { .. } => "made_otherwise",
            RequestRefusal::BrokeOff => "broke_off",
        };
        Sentence {
            code: code.to_owned(),
            en: self.to_string(),
        }
    }
}

use super::PermitMessage;
use crate::{En, Format};

pub(super) fn text(message: &PermitMessage, f: &En) -> String {
    match message {
        PermitMessage::Ventilation {
            plan_area,
            ratio,
            required,
            upper,
            ridge_vents,
            missing,
        } => format!(
            "Attic ventilation: {} of footprint at 1 to {} needs {} sq in of opening, {} sq in of it near the ridge. Ridge vents give {} sq in; {} sq in are missing.",
            f.area(*plan_area),
            f.number(*ratio, 0),
            f.number(*required, 0),
            f.number(*upper, 0),
            f.number(*ridge_vents, 0),
            f.number(*missing, 0)
        ),
        PermitMessage::NoIceBarrier => "Ice and water barrier: the notes ask for none.".to_owned(),
        PermitMessage::IceBarrierLength { length } => format!(
            "Ice and water barrier along the eaves: {} ft in all courses.",
            f.number(length.in_feet(), 0)
        ),
        PermitMessage::IceBarrierRule {
            inside,
            up_slope,
            from,
        } => format!(
            "{} in past the wall line. From {} on, at least {} in up the slope.",
            f.number(inside.in_inches(), 2),
            f.pitch(*from),
            f.number(up_slope.in_inches(), 2)
        ),
        PermitMessage::IceBarrierPastWall { inside } => {
            format!("{} in past the wall line.", f.number(inside.in_inches(), 2))
        }
        PermitMessage::NotRequired => "Not required.".to_owned(),
        PermitMessage::HalfLapBelow { pitch } => format!("Half-lapped below {}.", f.pitch(*pitch)),
        PermitMessage::NoShinglesBelow { pitch } => {
            format!("No shingles below {}.", f.pitch(*pitch))
        }
        PermitMessage::VentilationRule {
            ratio,
            upper_percent,
        } => format!(
            "1 to {}, {} % of it near the ridge.",
            f.number(*ratio, 0),
            f.number(*upper_percent, 1)
        ),
        PermitMessage::MostLayers { layers } => format!("At most {} in the end.", f.count(*layers)),
        PermitMessage::Source {
            place,
            source,
            read_on,
            read_by,
        } => format!(
            "For \"{}\": \"{}\", read {} by \"{}\".",
            place.0,
            source.0,
            f.date(*read_on),
            read_by.0
        ),
    }
}

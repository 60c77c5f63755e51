use super::PermitMessage;
use crate::{Es, Format};

pub(super) fn text(message: &PermitMessage, f: &Es) -> String {
    match message {
        PermitMessage::Ventilation {
            plan_area,
            ratio,
            required,
            upper,
            ridge_vents,
            missing,
        } => format!(
            "Ventilación del ático: {} de planta a 1 por {} piden {} pulg² de abertura, {} pulg² de ellas cerca de la cumbrera. Las ventilas de cumbrera dan {} pulg²; faltan {} pulg².",
            f.area(*plan_area),
            f.number(*ratio, 0),
            f.number(*required, 0),
            f.number(*upper, 0),
            f.number(*ridge_vents, 0),
            f.number(*missing, 0)
        ),
        PermitMessage::NoIceBarrier => {
            "Membrana contra hielo y agua: las notas no la piden.".to_owned()
        }
        PermitMessage::IceBarrierLength { length } => format!(
            "Membrana contra hielo y agua a lo largo de los aleros: {} pies en todas las hiladas.",
            f.number(length.in_feet(), 0)
        ),
        PermitMessage::IceBarrierRule {
            inside,
            up_slope,
            from,
        } => format!(
            "{} pulg pasando la línea de la pared. Desde {}, por lo menos {} pulg por la pendiente.",
            f.number(inside.in_inches(), 2),
            f.pitch(*from),
            f.number(up_slope.in_inches(), 2)
        ),
        PermitMessage::IceBarrierPastWall { inside } => format!(
            "{} pulg pasando la línea de la pared.",
            f.number(inside.in_inches(), 2)
        ),
        PermitMessage::NotRequired => "No se pide.".to_owned(),
        PermitMessage::HalfLapBelow { pitch } => {
            format!("A medio traslape con menos de {}.", f.pitch(*pitch))
        }
        PermitMessage::NoShinglesBelow { pitch } => {
            format!("Sin shingles con menos de {}.", f.pitch(*pitch))
        }
        PermitMessage::VentilationRule {
            ratio,
            upper_percent,
        } => format!(
            "1 por {}, {} % cerca de la cumbrera.",
            f.number(*ratio, 0),
            f.number(*upper_percent, 1)
        ),
        PermitMessage::MostLayers { layers } => {
            format!("Al final, {} cuando mucho.", f.count(*layers))
        }
        PermitMessage::Source {
            place,
            source,
            read_on,
            read_by,
        } => format!(
            "Para \"{}\": \"{}\", leído el {} por \"{}\".",
            place.0,
            source.0,
            f.date(*read_on),
            read_by.0
        ),
    }
}

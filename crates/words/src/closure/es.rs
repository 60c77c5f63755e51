use super::ClosureMessage;
use crate::{Es, Format};
use eavebook_core::outline::{Checked, LastLeg, Miss, Sense, Side, SlipKind, Way};
use eavebook_core::units::Length;

pub(super) fn text(message: &ClosureMessage, f: &Es) -> String {
    match message {
        ClosureMessage::NoLegs => {
            "Todavía no se ha medido ningún lado. Empiece en una esquina de afuera.".to_owned()
        }
        ClosureMessage::ToClose { along, across } => format!(
            "Para cerrar: {} a lo largo, {} a lo ancho.",
            left(*along, f),
            left(*across, f)
        ),
        ClosureMessage::Closes { within } => format!("Cierra a {}.", f.length(*within)),
        ClosureMessage::Gap {
            along,
            across,
            last_leg,
        } => match last_leg {
            LastLeg::Known => format!("{}.", crate::capital(&misses(*along, *across, f))),
            LastLeg::Perhaps => {
                format!(
                    "Si este fue el último lado, {}.",
                    misses(*along, *across, f)
                )
            }
        },
        ClosureMessage::NotChecked { worked_out } => worked_out_text(worked_out.n, f),
        ClosureMessage::NotCheckedAndGap {
            worked_out,
            along,
            across,
        } => format!(
            "{} {}.",
            worked_out_text(worked_out.n, f),
            crate::capital(&misses(*along, *across, f))
        ),
        ClosureMessage::ReadAgain { things, or_another } => {
            let mut names: Vec<String> = things.iter().map(|thing| f.thing(thing)).collect();
            if *or_another {
                names.push("algún otro".to_owned());
            }
            format!("Mida otra vez {}.", f.or(&names))
        }
        ClosureMessage::SwappedDigits { legs } => {
            format!("¿Números volteados en {}?", f.or(&leg_names(legs, f)))
        }
        ClosureMessage::LegMissing { as_long_as } => format!(
            "Lo que falta mide igual que {}. ¿Falta un lado, o se marcó mal una esquina?",
            f.or(&leg_names(as_long_as, f))
        ),
        ClosureMessage::TurnedWrongWay { legs } => format!(
            "La diferencia es el doble de {}. ¿Va para el otro lado?",
            f.or(&leg_names(legs, f))
        ),
        ClosureMessage::DroppedTen => "¿Diez pies de más o de menos?".to_owned(),
        ClosureMessage::FullTape { length } => {
            format!("¿Se olvidó una cinta completa de {}?", f.length(*length))
        }
        ClosureMessage::ReadOneAlong { legs } => match legs.as_slice() {
            [] => "Mida otra vez un lado en esa dirección.".to_owned(),
            [..] => format!("Mida otra vez {}.", f.or(&leg_names(legs, f))),
        },
        ClosureMessage::UnseenPair { pairs } => unseen_pair(pairs),
        ClosureMessage::UnseenTape => {
            "El cierre no muestra una unidad equivocada ni una cinta estirada en todas las medidas."
                .to_owned()
        }
        ClosureMessage::UnseenOverhang => {
            "El cierre no muestra un vuelo que falta en todo el contorno.".to_owned()
        }
        ClosureMessage::UnseenSquare => {
            "El cierre no muestra paredes fuera de escuadra.".to_owned()
        }
        ClosureMessage::Slip { kind, likely } => match likely {
            None => slip(*kind).to_owned(),
            Some(likely) => format!("{} Si es así, eran {}.", slip(*kind), f.length(*likely)),
        },
        ClosureMessage::Lacking {
            way,
            side,
            legs,
            readings,
            overall,
        } => lacking((*way, *side), legs, *readings, *overall, f),
        ClosureMessage::Group {
            corners: [first, last],
            along,
            across,
        } => format!(
            "Las esquinas {first} a {last} solo están fijas entre sí: {} a lo largo, {} a lo ancho.",
            f.length(*along),
            f.length(*across)
        ),
        ClosureMessage::LooseCorner { corner } => {
            format!("La esquina {corner} no está fija con ninguna otra.")
        }
        ClosureMessage::CheckedBy { checked } => match checked {
            Checked::Nothing => "Ninguna otra medida comprueba esta.",
            Checked::Weakly => "Las otras medidas comprueban poco esta.",
            Checked::Well => "Las otras medidas comprueban esta.",
        }
        .to_owned(),
    }
}

fn left(length: Option<Length>, f: &Es) -> String {
    length.map_or_else(
        || "una distancia sin medir".to_owned(),
        |length| f.length(length),
    )
}

fn misses(along: Option<Miss>, across: Option<Miss>, f: &Es) -> String {
    let part = |miss: Miss| {
        let sense = match miss.sense {
            Sense::Short => "faltan",
            Sense::Long => "sobran",
        };
        format!("{sense} {}", f.length(miss.by))
    };
    match (along, across) {
        (Some(along), Some(across)) => format!(
            "{} a lo largo del frente y {} a lo ancho",
            part(along),
            part(across)
        ),
        (Some(along), None) => format!("{} a lo largo del frente", part(along)),
        (None, Some(across)) => format!("{} a lo ancho del frente", part(across)),
        (None, None) => "dentro de la tolerancia".to_owned(),
    }
}

fn worked_out_text(legs: u64, f: &Es) -> String {
    if legs == 1 {
        "Sin comprobar: 1 lado se calculó de los demás.".to_owned()
    } else {
        format!(
            "Sin comprobar: {} lados se calcularon de los demás.",
            f.number(legs as f64, 0)
        )
    }
}

fn leg_names(legs: &[u32], f: &Es) -> Vec<String> {
    legs.iter().map(|leg| f.leg(*leg)).collect()
}

fn unseen_pair(pairs: &[[u32; 2]]) -> String {
    let of_pair = match pairs {
        [] => {
            return "El cierre no muestra el mismo error en los dos lados de un par.".to_owned();
        }
        [[a, b]] => format!("lados {a} y {b}"),
        [[a, b], [c, d]] => format!("lados {a} y {b}, o {c} y {d}"),
        [[a, b], [c, d], ..] => format!("lados {a} y {b}, {c} y {d}, u otros"),
    };
    format!("El cierre no muestra el mismo error en los dos lados de un par ({of_pair}).")
}

fn slip(kind: SlipKind) -> &'static str {
    match kind {
        SlipKind::Tens => "¿Una decena equivocada?",
        SlipKind::OneFoot => "¿Un pie de más o de menos?",
        SlipKind::Transposed => "¿Números volteados?",
        SlipKind::InchesForTenths => "¿Décimas tomadas por pulgadas?",
        SlipKind::Overhang => "¿Falta un vuelo?",
        SlipKind::Reversed => "¿La cinta se leyó desde la otra punta?",
        SlipKind::Other => "¿Otra cosa?",
    }
}

fn lacking(
    (way, side): (Way, Option<Side>),
    legs: &[u32],
    readings: u32,
    overall: Option<[u32; 2]>,
    f: &Es,
) -> String {
    let wing = match side {
        None => "de la casa",
        Some(Side::Front) => "del ala del frente",
        Some(Side::Back) => "del ala de atrás",
        Some(Side::Left) => "del ala izquierda",
        Some(Side::Right) => "del ala derecha",
    };
    let unknown = match way {
        Way::Wide => format!("No se sabe el ancho {wing}."),
        Way::Deep => format!("No se sabe el fondo {wing}."),
        Way::Slanting => format!("No se saben los lados inclinados {wing}."),
    };
    let mut read = if readings == 1 {
        f.or(&leg_names(legs, f))
    } else {
        let names: Vec<String> = legs.iter().map(u32::to_string).collect();
        format!("{readings} de los lados {}", f.and(&names))
    };
    if let Some([from, to]) = overall {
        read.push_str(&format!(
            ", o la medida total de la esquina {from} a la esquina {to}"
        ));
    }
    format!("{unknown} Mida {read}.")
}

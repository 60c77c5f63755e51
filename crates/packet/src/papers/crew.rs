//! The crew sheet: what lies there, how steep, what to watch for, what comes on the truck. No money.

use super::{PaperInput, caution};
use crate::cautions;
use crate::edition::{Lang, PaperKind};
use crate::leaf::{Block, Leaf, Set, Table};
use crate::said;
use crate::words::{self, either};
use eavebook_core::takeoff::{OrderItem, Pack, Takeoff};

pub fn leaf(told: &PaperInput, lang: Lang) -> Leaf {
    let address = &told.job.book.address;
    let opening = match lang {
        Lang::En => format!(
            "This is the roof at {address} for the crew that works on it: how it lies, how steep it is, what to watch for and what comes with the truck."
        ),
        Lang::Es => format!(
            "Este es el techo de {address} para la cuadrilla: cómo está, qué tan empinado es, con qué tener cuidado y qué trae el camión."
        ),
    };
    let mut leaf = told.begin(PaperKind::Crew, lang, opening);
    leaf.blocks.push(told.plan(lang));
    leaf.say(told.area(lang));
    let mut watch = vec![
        caution(cautions::climbing(lang)),
        caution(cautions::ice(lang)),
        caution(cautions::wires(lang)),
        caution(cautions::structure(lang)),
        caution(cautions::lead_and_asbestos(lang)),
    ];
    watch.extend(cautions::of_job(told.job, lang).into_iter().map(caution));
    leaf.under(either(lang, "Watch for", "Cuidado con"), watch);
    leaf.under(
        either(lang, "Faces and pitch", "Caras y pendiente"),
        told.faces(lang).into_iter().collect(),
    );
    leaf.under(
        either(lang, "Deck and layers", "Madera y capas"),
        vec![Block::List {
            items: told.deck_and_layers(lang),
        }],
    );
    leaf.under(
        either(lang, "What stands out of the roof", "Lo que sale del techo"),
        told.items(lang).into_iter().collect(),
    );
    leaf.under(
        either(lang, "Edges", "Orillas"),
        told.each_edge(lang).into_iter().collect(),
    );
    if let Some(takeoff) = told.job.takeoff {
        leaf.under(
            either(lang, "Material on the truck", "Material en el camión"),
            vec![material(takeoff, lang)],
        );
        leaf.under(
            either(lang, "Tear-off and bin", "Lo que se quita y el contenedor"),
            vec![tear_off(takeoff, lang)],
        );
    }
    leaf.under(
        either(lang, "Not known", "No se sabe"),
        told.not_known(lang),
    );
    let lines = match lang {
        Lang::En => [
            "Where the bin stands",
            "Where the truck unloads",
            "No-go: plants, septic, driveway",
            "House rules: hours, pets, gate",
        ],
        Lang::Es => [
            "Dónde va el contenedor",
            "Dónde descarga el camión",
            "Por dónde no: plantas, fosa, entrada",
            "Reglas de la casa: horario, mascotas, portón",
        ],
    };
    leaf.under(
        either(lang, "To be written in on the day", "Para llenar ese día"),
        vec![Block::Sign {
            lines: lines.map(str::to_owned).to_vec(),
        }],
    );
    leaf
}

fn material(takeoff: &Takeoff, lang: Lang) -> Block {
    let mut table = Table::with(&[
        (either(lang, "What", "Qué"), Set::Wide),
        (either(lang, "Comes", "Llega"), Set::Figures),
        (
            either(lang, "Needed and spare", "Hace falta y sobra"),
            Set::Figures,
        ),
        (either(lang, "Came", "Llegó"), Set::Blank),
    ]);
    for line in &takeoff.order {
        table.row(vec![
            words::capital(&item(&line.item, lang)),
            format!("{} {}", line.packs, pack(line.pack, line.packs, lang)),
            said::needed(line, lang),
            String::new(),
        ]);
    }
    Block::Table(table)
}

/// How many loads, and how surely.
fn tear_off(takeoff: &Takeoff, lang: Lang) -> Block {
    let off = &takeoff.tear_off;
    let text = match lang {
        Lang::En => format!(
            "What comes off weighs about {:.0} lb, likely {:.0} to {:.0} lb: {:.1} loads, likely {:.1} to {:.1}. Plan for {}. Weigh the first load: the hauler's own limit counts.",
            off.p50.in_pounds(),
            off.p10.in_pounds(),
            off.p90.in_pounds(),
            off.loads_p50.value(),
            off.loads_p10.value(),
            off.loads_p90.value(),
            words::counted(
                usize::try_from(off.loads).unwrap_or(usize::MAX),
                "load",
                "loads"
            )
        ),
        Lang::Es => format!(
            "Lo que se quita pesa como {:.0} lb, casi seguro entre {:.0} y {:.0} lb: {:.1} cargas, entre {:.1} y {:.1}. Cuenten con {}. Pesen la primera carga: manda el límite del transportista.",
            off.p50.in_pounds(),
            off.p10.in_pounds(),
            off.p90.in_pounds(),
            off.loads_p50.value(),
            off.loads_p10.value(),
            off.loads_p90.value(),
            words::counted(
                usize::try_from(off.loads).unwrap_or(usize::MAX),
                "carga",
                "cargas"
            )
        ),
    };
    Block::Text { text }
}

/// A line of the order in the words of the roof.
pub fn item(item: &OrderItem, lang: Lang) -> String {
    if lang == Lang::En {
        return match item {
            OrderItem::Field => "field shingles".to_owned(),
            OrderItem::Starter => "starter strip".to_owned(),
            OrderItem::Cap => "hip and ridge cap".to_owned(),
            OrderItem::RidgeVent
            | OrderItem::ValleyMetal
            | OrderItem::IceBarrier
            | OrderItem::Underlayment
            | OrderItem::EaveEdgeMetal
            | OrderItem::RakeEdgeMetal
            | OrderItem::StepFlashing
            | OrderItem::ApronFlashing
            | OrderItem::KickOut
            | OrderItem::Nails
            | OrderItem::Boot { .. }
            | OrderItem::DeckSheet => item.to_string(),
        };
    }
    match item {
        OrderItem::Field => "shingles".to_owned(),
        OrderItem::Starter => "tira de arranque".to_owned(),
        OrderItem::Cap => "tapa de cumbrera y lima".to_owned(),
        OrderItem::RidgeVent => "ventila de cumbrera".to_owned(),
        OrderItem::ValleyMetal => "lámina para valle".to_owned(),
        OrderItem::IceBarrier => "membrana contra hielo".to_owned(),
        OrderItem::Underlayment => "fieltro".to_owned(),
        OrderItem::EaveEdgeMetal => "goterón de alero".to_owned(),
        OrderItem::RakeEdgeMetal => "goterón de gablete".to_owned(),
        OrderItem::StepFlashing => "flashing escalonado".to_owned(),
        OrderItem::ApronFlashing => "flashing de mandil".to_owned(),
        OrderItem::KickOut => "desviador (kick-out)".to_owned(),
        OrderItem::Nails => "clavos".to_owned(),
        OrderItem::Boot { kind, size } => {
            let of = match kind {
                eavebook_core::takeoff::BootKind::Flue => "chimenea de metal",
                eavebook_core::takeoff::BootKind::Mast => "mástil",
                eavebook_core::takeoff::BootKind::Pipe => "tubo",
            };
            format!("bota de {of} {size} pulg")
        }
        OrderItem::DeckSheet => "hoja de madera".to_owned(),
    }
}

/// In what it comes, in one or many.
pub fn pack(pack: Pack, count: u64, lang: Lang) -> &'static str {
    let (one, many) = match (lang, pack) {
        (Lang::En, Pack::Pack) => ("pack", "packs"),
        (Lang::En, Pack::Stick) => ("stick", "sticks"),
        (Lang::En, Pack::Roll) => ("roll", "rolls"),
        (Lang::En, Pack::Box) => ("box", "boxes"),
        (Lang::En, Pack::Sheet) => ("sheet", "sheets"),
        (Lang::En, Pack::Piece) => ("piece", "pieces"),
        (Lang::Es, Pack::Pack) => ("paquete", "paquetes"),
        (Lang::Es, Pack::Stick) => ("tramo", "tramos"),
        (Lang::Es, Pack::Roll) => ("rollo", "rollos"),
        (Lang::Es, Pack::Box) => ("caja", "cajas"),
        (Lang::Es, Pack::Sheet) => ("hoja", "hojas"),
        (Lang::Es, Pack::Piece) => ("pieza", "piezas"),
    };
    if count == 1 { one } else { many }
}

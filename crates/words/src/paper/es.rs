use super::PaperMessage;
use super::message::PlanEdge;
use crate::label::paper::PaperLabel;
use crate::{Count, FaceName, Noun, capital};
use crate::{Es, Format};
use eavebook_core::roof::EdgeKind;
use eavebook_core::units::RoundTo;

pub(super) fn text(message: &PaperMessage, f: &Es) -> String {
    match message {
        PaperMessage::PretendHouse => "Casa inventada: no es una oferta. Nada de esto es de un lugar real.".to_owned(),
        PaperMessage::DemoRates => "No es una oferta: el precio usa las tarifas inventadas que trae el programa. Ponga las tarifas de la compañía y haga otra vez esta carpeta.".to_owned(),
        PaperMessage::Foot { reader, version } => format!("{}, versión {version}", PaperLabel::from(*reader).text(f.language())),
        PaperMessage::RoofArea { area } => format!("El techo mide {}, más o menos {}. El ± es una desviación estándar: 2 de cada 3 veces el área verdadera queda dentro.", f.area_figure(*area), f.squares(area.value)),
        PaperMessage::RoofAreaNotKnown => "Todavía no se sabe el área del techo. Vea la lista de lo que no se sabe.".to_owned(),
        PaperMessage::PlanShows { faces, edges } => format!("Plano del techo, el frente abajo: {}, {}. Las tablas dan todas con sus medidas.", f.count(*faces), f.count(*edges)),
        PaperMessage::PlanLists { faces, edges } => plan_lists(faces, edges, f),
        PaperMessage::SolidShows { faces } => format!("Vista 3D desde la esquina derecha del frente, no está a escala. Aguas: {}. Las tablas dan sus medidas.", face_list(faces, f)),
        PaperMessage::EdgeWorkedOut { kind } => format!("{}, {}", capital(f.edge_kind(*kind)), worked_out(*kind)),
        PaperMessage::LegWorkedOut => "Lado, calculado".to_owned(),
        PaperMessage::Deck { deck } => format!("Base: {}", f.deck(deck)),
        PaperMessage::DeckPlanks { deck, width, gap } => { let gap = gap.map_or_else(|| f.not_known().to_owned(), |gap| f.rounded(gap, RoundTo::EighthInch)); format!("Base: {}, {} de ancho, separación: {gap}", f.deck(deck), f.rounded(*width, RoundTo::EighthInch)) },
        PaperMessage::DeckNotKnown => "Base: no se sabe".to_owned(),
        PaperMessage::Covering { covering } => format!("Material que hay: {}", f.covering(covering)),
        PaperMessage::CoveringNotKnown => "Material que hay: no se sabe".to_owned(),
        PaperMessage::Layers { layers } => format!("En el techo ahora: {}", f.count(*layers)),
        PaperMessage::LayersNotKnown => "Capas en el techo: no se sabe".to_owned(),
    }
}

fn worked_out(kind: EdgeKind) -> &'static str {
    match kind {
        EdgeKind::Eave | EdgeKind::PitchBreak => "calculado",
        EdgeKind::Rake
        | EdgeKind::Ridge
        | EdgeKind::Hip
        | EdgeKind::Valley
        | EdgeKind::SideWall
        | EdgeKind::HeadWall => "calculada",
    }
}

fn face_list(faces: &[FaceName], f: &Es) -> String {
    let names: Vec<String> = faces.iter().map(|face| f.face(*face)).collect();
    f.and(&names)
}

fn plan_lists(faces: &[FaceName], edges: &[PlanEdge], f: &Es) -> String {
    let names: Vec<String> = faces.iter().map(|face| f.face(*face)).collect();
    let edge = |edge: &PlanEdge| {
        let kind = edge.kind.map_or("lado", |kind| f.edge_kind(kind));
        let length = edge.length.map(|length| f.length(length));
        let length = length.unwrap_or_else(|| f.not_known().to_owned());
        format!("{} {kind} {length}", edge.name)
    };
    let listed: Vec<String> = edges.iter().map(edge).collect();
    format!(
        "Plano con el frente abajo. {}: {}. {}: {}.",
        f.count(Count::new(faces.len(), Noun::Face)),
        names.join(", "),
        f.count(Count::new(edges.len(), Noun::Edge)),
        listed.join(", ")
    )
}

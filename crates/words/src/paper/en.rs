use super::PaperMessage;
use super::message::PlanEdge;
use crate::label::paper::PaperLabel;
use crate::{Count, FaceName, Noun, capital};
use crate::{En, Format};
use eavebook_core::units::RoundTo;

pub(super) fn text(message: &PaperMessage, f: &En) -> String {
    match message {
        PaperMessage::PretendHouse => "Pretend house: not an offer. Nothing here is of a real place.".to_owned(),
        PaperMessage::DemoRates => "Not an offer: the price uses the invented rates that come with the program. Enter the firm's own rates, then make this packet again.".to_owned(),
        PaperMessage::Foot { reader, version } => format!("{}, version {version}", PaperLabel::from(*reader).text(f.language())),
        PaperMessage::RoofArea { area } => format!("The roof is {}, about {}. The ± is one standard deviation: 2 times in 3 the true area lies within it.", f.area_figure(*area), f.squares(area.value)),
        PaperMessage::RoofAreaNotKnown => "The roof area is not known yet. See the list of what is not known.".to_owned(),
        PaperMessage::PlanShows { faces, edges } => format!("Roof plan, front at the bottom: {}, {}. The tables list all of them with their figures.", f.count(*faces), f.count(*edges)),
        PaperMessage::PlanLists { faces, edges } => plan_lists(faces, edges, f),
        PaperMessage::SolidShows { faces } => format!("3D view from the front right corner, not to scale. Faces: {}. The tables give their figures.", face_list(faces, f)),
        PaperMessage::EdgeWorkedOut { kind } => format!("{}, worked out", capital(f.edge_kind(*kind))),
        PaperMessage::LegWorkedOut => "Leg, worked out".to_owned(),
        PaperMessage::Deck { deck } => format!("Deck: {}", f.deck(deck)),
        PaperMessage::DeckPlanks { deck, width, gap } => { let gap = gap.map_or_else(|| f.not_known().to_owned(), |gap| f.rounded(gap, RoundTo::EighthInch)); format!("Deck: {}, {} wide, gaps: {gap}", f.deck(deck), f.rounded(*width, RoundTo::EighthInch)) },
        PaperMessage::DeckNotKnown => "Deck: not known".to_owned(),
        PaperMessage::Covering { covering } => format!("Covering now: {}", f.covering(covering)),
        PaperMessage::CoveringNotKnown => "Covering now: not known".to_owned(),
        PaperMessage::Layers { layers } => format!("On the roof now: {}", f.count(*layers)),
        PaperMessage::LayersNotKnown => "Layers on the roof: not known".to_owned(),
    }
}

fn face_list(faces: &[FaceName], f: &En) -> String {
    let names: Vec<String> = faces.iter().map(|face| f.face(*face)).collect();
    f.and(&names)
}

fn plan_lists(faces: &[FaceName], edges: &[PlanEdge], f: &En) -> String {
    let names: Vec<String> = faces.iter().map(|face| f.face(*face)).collect();
    let edge = |edge: &PlanEdge| {
        let kind = edge.kind.map_or("leg", |kind| f.edge_kind(kind));
        let length = edge.length.map(|length| f.length(length));
        let length = length.unwrap_or_else(|| f.not_known().to_owned());
        format!("{} {kind} {length}", edge.name)
    };
    let listed: Vec<String> = edges.iter().map(edge).collect();
    format!(
        "Plan with the front at the bottom. {}: {}. {}: {}.",
        f.count(Count::new(faces.len(), Noun::Face)),
        names.join(", "),
        f.count(Count::new(edges.len(), Noun::Edge)),
        listed.join(", ")
    )
}

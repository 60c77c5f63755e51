use crate::format::{CoveringName, DeckName};
use crate::samples::{BACK_2, FRONT_GABLE};
use crate::{Count, FaceName, Noun};
use eavebook_core::book::edition::Edition;
use eavebook_core::roof::EdgeKind;
use eavebook_core::units::{Area, Figure, Length};

/// An edge as the description of a plan lists it.
#[derive(Clone, Debug, PartialEq)]
pub struct PlanEdge {
    /// Its name on the plan: `e4`.
    pub name: String,
    /// Its kind; `None` for a leg of an outline without a roof.
    pub kind: Option<EdgeKind>,
    /// Its length; `None` if it is not known.
    pub length: Option<Length>,
}

messages! {
    /// Sentences of more than one paper.
    PaperMessage, "paper";
    /// The job is the pretend house of the demo.
    PretendHouse;
    /// The price was worked out with the demo rates.
    DemoRates;
    /// For whom a packet is made and which version it is, at the foot of each page.
    Foot {
        /// The reader.
        reader: Edition,
        /// From 1.
        version: u32,
    } = { reader: Edition::Firm, version: 1 };
    /// Area and squares of the roof.
    RoofArea {
        /// With one standard deviation.
        area: Figure<Area>,
    } = { area: Figure { value: Area::square_feet(2396.2), sigma: Area::square_feet(12.8) } };
    /// There is no roof yet.
    RoofAreaNotKnown;
    /// What a plan shows, for readers who cannot see it.
    PlanShows {
        /// How many faces.
        faces: Count,
        /// How many edges.
        edges: Count,
    } = { faces: Count::new(1, Noun::Face), edges: Count::new(1, Noun::Edge) },
        { faces: Count::new(2, Noun::Face), edges: Count::new(2, Noun::Edge) };
    /// What a plan shows, face by face and edge by edge.
    PlanLists {
        /// Every face.
        faces: Vec<FaceName>,
        /// Every edge.
        edges: Vec<PlanEdge>,
    } = {
        faces: vec![BACK_2],
        edges: vec![PlanEdge {
            name: "e4".to_owned(),
            kind: Some(EdgeKind::Eave),
            length: Some(Length::feet(14.0)),
        }],
    };
    /// What the 3D view shows, for readers who cannot see it.
    SolidShows {
        /// Every face.
        faces: Vec<FaceName>,
    } = {
        faces: vec![FRONT_GABLE, BACK_2],
    };
    /// An edge whose length is worked out from the other legs.
    EdgeWorkedOut {
        /// Its kind.
        kind: EdgeKind,
    } = { kind: EdgeKind::Eave };
    /// A leg whose length is worked out from the others.
    LegWorkedOut;
    /// What the covering is nailed to.
    Deck {
        /// Its name.
        deck: DeckName,
    } = { deck: DeckName::Sheet };
    /// Planks with their width and the gap between them.
    DeckPlanks {
        /// Its name.
        deck: DeckName,
        /// Width of a plank.
        width: Length,
        /// `None` if nobody read it.
        gap: Option<Length>,
    } = { deck: DeckName::Plank, width: Length::inches(5.5), gap: Some(Length::inches(0.25)) },
        { deck: DeckName::Plank, width: Length::inches(5.5), gap: None };
    /// Nobody saw the deck.
    DeckNotKnown;
    /// What covers the roof now.
    Covering {
        /// Its name.
        covering: CoveringName,
    } = { covering: CoveringName::StripShingle };
    /// Nobody saw the covering.
    CoveringNotKnown;
    /// How many layers are on the roof.
    Layers {
        /// How many.
        layers: Count,
    } = { layers: Count::new(1, Noun::Layer) },
        { layers: Count::new(2, Noun::Layer) };
    /// Nobody counted the layers.
    LayersNotKnown;
}

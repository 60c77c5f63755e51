use crate::samples::BACK_2;
use crate::{Count, FaceName, Noun};
use eavebook_core::book::kinds::ItemKind;
use eavebook_core::price::PriceItem;
use eavebook_core::takeoff::{BootKind, OrderItem};
use eavebook_core::units::{Area, Money};

/// Boots of one kind and size.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct BootCount {
    /// What they go around.
    pub kind: BootKind,
    /// Inches as text: `1.5`, `3`.
    pub size: String,
    /// How many.
    pub count: u64,
}

messages! {
    /// Scope of work, price and what the price leaves out.
    ProposalMessage, "proposal";
    /// The old covering is torn off.
    TearOff {
        /// How many layers.
        layers: Count,
    } = { layers: Count::new(1, Noun::Layer) },
        { layers: Count::new(2, Noun::Layer) };
    /// The old covering is torn off; nobody counted its layers.
    TearOffNotCounted;
    /// Membrane along the eaves.
    IceBarrierAtEaves;
    /// Membrane along the eaves and in the valleys.
    IceBarrierAtEavesAndValleys;
    /// Felt or synthetic over the whole roof.
    Underlayment;
    /// New metal.
    Metal {
        /// Which.
        items: Vec<OrderItem>,
    } = { items: vec![OrderItem::EaveEdgeMetal, OrderItem::StepFlashing] };
    /// The new covering.
    Covering {
        /// Area that is covered.
        area: Area,
        /// What is laid.
        items: Vec<OrderItem>,
    } = { area: Area::square_feet(2396.2), items: vec![OrderItem::Starter, OrderItem::Cap] };
    /// New boots for pipes, masts and flues.
    Boots {
        /// By kind and size.
        boots: Vec<BootCount>,
    } = { boots: vec![BootCount { kind: BootKind::Pipe, size: "3".to_owned(), count: 1 }] },
        {
            boots: vec![
                BootCount { kind: BootKind::Pipe, size: "3".to_owned(), count: 2 },
                BootCount { kind: BootKind::Flue, size: "4".to_owned(), count: 1 },
            ],
        };
    /// Sheets over a deck whose gaps are too wide for nails.
    DeckOverlay;
    /// The ground is swept.
    CleanUp;
    /// The price at the 10 and 90 % ends of the roof area.
    PriceRange {
        /// At the lower end.
        low: Money,
        /// At the upper end.
        high: Money,
    } = {
        low: Money::read("11855.82").unwrap_or_default(),
        high: Money::read("12062.15").unwrap_or_default(),
    };
    /// The price at both ends of the likely number of layers.
    LayersRange {
        /// With the fewest.
        low: Money,
        /// With the most.
        high: Money,
    } = {
        low: Money::read("11855.82").unwrap_or_default(),
        high: Money::read("12962.15").unwrap_or_default(),
    };
    /// The price with a deck of sheets and with planks that are laid over.
    DeckRange {
        /// With sheets.
        low: Money,
        /// With planks.
        high: Money,
    } = {
        low: Money::read("11855.82").unwrap_or_default(),
        high: Money::read("13962.15").unwrap_or_default(),
    };
    /// There is no price.
    NoPriceYet;
    /// A line whose rate is blank.
    ItemNotPriced {
        /// The line.
        item: PriceItem,
    } = { item: PriceItem::Ordered(OrderItem::RidgeVent) },
        { item: PriceItem::Tip };
    /// The rate of a square is blank.
    SquareNotPriced;
    /// A face too flat for shingles.
    FaceTooFlat {
        /// The face.
        face: FaceName,
        /// Its area.
        area: Area,
    } = {
        face: BACK_2,
        area: Area::square_feet(774.0),
    };
    /// Vents near the ridge that are needed beyond the ridge vents.
    VentsNotPriced {
        /// Opening that is missing.
        square_inches: f64,
    } = { square_inches: 120.0 };
    /// A saddle behind a wide chimney.
    SaddleNotPriced;
    /// Penetrations for which the rates have no line.
    PenetrationsNotPriced {
        /// Their kind.
        item: ItemKind,
        /// How many.
        count: u64,
    } = { item: ItemKind::BoxVent, count: 1 },
        { item: ItemKind::BoxVent, count: 2 };
    /// Everything that the scope does not name.
    AnythingElse;
}

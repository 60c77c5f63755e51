//! Titles, headings, table heads, cells and fill-in lines of papers.

use super::state::StateLabel;
use crate::Language;
use eavebook_core::book::edition::Edition;
use eavebook_core::check::State;

labels! {
    /// Titles, headings, table heads, cells and fill-in lines of papers.
    PaperLabel, paper;
    Proposal: heading;
    CrewSheet: heading;
    OrderList: heading;
    PermitSheet: heading;
    PhotoSheet: heading;
    MeasurementRecord: heading;
    ChangesFound: heading;
    ForOwner;
    ForCrew;
    ForFirm;
    ForSupplier;
    ForPermitOffice;
    ScopeOfWork: heading;
    Price: heading;
    NotIncluded: heading;
    NotKnown: heading;
    PleaseNote: heading;
    RoofPenetrations: heading;
    Accepted: heading;
    WatchOut: heading;
    FacesAndPitch: heading;
    Faces: heading;
    Edges: heading;
    EdgesByKind: heading;
    DeckAndLayers: heading;
    MaterialOnTruck: heading;
    TearOffAndBin: heading;
    FillInThatDay: heading;
    ToFillIn: heading;
    DeliverySite: heading;
    CodeNotes: heading;
    FrontSide: heading;
    RightSide: heading;
    BackSide: heading;
    LeftSide: heading;
    NotOnOneSide: heading;
    Readings: heading;
    StruckReadings: heading;
    PitchReadings: heading;
    AdjustedLengths: heading;
    Closure: heading;
    HowAreaIsFound: heading;
    ChangedSinceLast: heading;
    Changes: heading;
    HowChangesArePriced: heading;
    Face;
    Pitch;
    Area;
    Edge;
    EdgeKind;
    Length;
    FacesAlongEdge;
    Penetration;
    Size;
    OnFace;
    Saddle;
    Material = same;
    OnTheTruck;
    Order;
    Needed;
    Spare;
    Arrived;
    Line;
    ColorLot;
    Received;
    CodeRule;
    AsRead;
    Source;
    PriceItem;
    Amount;
    Total = same;
    Thing;
    Reading;
    State;
    How;
    Leg;
    SmallestSlip;
    KnownBy;
    Before;
    Now;
    Change;
    Found;
    EachSheetLaid;
    Agreed;
    AgreedTotal;
    NotRead;
    OnNoFace;
    SaddleThere;
    SaddleMissing = same;
    SaddleNotSeen;
    NotPriced;
    NobodyYet;
    Nothing;
    Struck;
    TakenBack;
    Replaced;
    Suspect;
    PitchGiven;
    PitchLevelAndTape;
    PitchPhone;
    PitchPhoneReversed;
    PitchSighted;
    PitchTakenAsSame;
    PitchNotGot;
    IceBarrierRule;
    UnderlaymentRule;
    LeastPitchRule;
    VentilationRule;
    LayersRule;
    WhereBinStands;
    WhereTruckUnloads;
    NoGo;
    HouseRules;
    DeliveryDay;
    DropSpot;
    WhoReceives;
    Substitutions;
    HoldsUntil;
    OwnerSigns;
    FirmSigns;
    Page;
    PageOf;
    RoofPlan: heading;
}

impl From<Edition> for PaperLabel {
    fn from(reader: Edition) -> PaperLabel {
        match reader {
            Edition::Owner => PaperLabel::ForOwner,
            Edition::Crew => PaperLabel::ForCrew,
            Edition::Firm => PaperLabel::ForFirm,
            Edition::Supplier => PaperLabel::ForSupplier,
            Edition::Permit => PaperLabel::ForPermitOffice,
        }
    }
}

impl PaperLabel {
    /// How well a reading is known, as papers have it: a suspect may have been read several times.
    #[must_use]
    pub fn state(state: State, language: Language) -> &'static str {
        match state {
            State::Suspect => PaperLabel::Suspect.text(language),
            State::NotLooked => StateLabel::NotLooked.text(language),
            State::Hearsay => StateLabel::Hearsay.text(language),
            State::WorkedOut => StateLabel::WorkedOut.text(language),
            State::ReadOnce => StateLabel::ReadOnce.text(language),
            State::OffPhoto => StateLabel::OffPhoto.text(language),
            State::SettledAtDesk => StateLabel::SettledAtDesk.text(language),
            State::Agreed => StateLabel::Agreed.text(language),
            State::Proved => StateLabel::Proved.text(language),
            State::CannotGet => StateLabel::CannotGet.text(language),
            State::Struck => StateLabel::Struck.text(language),
        }
    }
}

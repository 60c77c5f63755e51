//! Headings of the start page of a packet and titles of its files.

labels! {
    /// Headings of the start page of a packet and titles of its files.
    PacketLabel, packet;
    StartHere: heading;
    Papers: heading;
    PlanAndTables: heading;
    Photos: heading;
    Missing: heading;
    MadeForOwner;
    MadeForCrew;
    MadeForFirm;
    MadeForSupplier;
    MadeForPermitOffice;
    PacketList;
    PlanPicture;
    PlanDrawing;
    RoofModel;
    OrderLines;
    PriceLines;
    PhotoList;
    FieldBook;
    Survey;
}

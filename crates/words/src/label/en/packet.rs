use crate::label::packet::PacketLabel;

pub(in crate::label) const fn text(label: PacketLabel) -> &'static str {
    match label {
        PacketLabel::StartHere => "Start here",
        PacketLabel::Papers => "Papers",
        PacketLabel::PlanAndTables => "Plan, tables and field book",
        PacketLabel::Photos => "Photos",
        PacketLabel::Missing => "Missing",
        PacketLabel::MadeForOwner => "Made for the owner of the house",
        PacketLabel::MadeForCrew => "Made for the crew",
        PacketLabel::MadeForFirm => "Made for the firm itself",
        PacketLabel::MadeForSupplier => "Made for the supplier of the material",
        PacketLabel::MadeForPermitOffice => "Made for the permit office",
        PacketLabel::PacketList => "The list of this packet",
        PacketLabel::PlanPicture => "Plan, as a picture",
        PacketLabel::PlanDrawing => "Plan, for a drawing program, in feet",
        PacketLabel::RoofModel => "Roof in 3D, in meters",
        PacketLabel::OrderLines => "Order lines",
        PacketLabel::PriceLines => "Price lines, with costs",
        PacketLabel::PhotoList => "List of photos",
        PacketLabel::FieldBook => "The field book, entry by entry",
        PacketLabel::Survey => "The survey, for eavebook solve",
    }
}

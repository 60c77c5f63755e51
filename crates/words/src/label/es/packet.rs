use crate::label::packet::PacketLabel;

pub(in crate::label) const fn text(label: PacketLabel) -> &'static str {
    match label {
        PacketLabel::StartHere => "Empiece aquí",
        PacketLabel::Papers => "Papeles",
        PacketLabel::PlanAndTables => "Plano, tablas y libreta",
        PacketLabel::Photos => "Fotos",
        PacketLabel::Missing => "Falta",
        PacketLabel::MadeForOwner => "Hecha para el dueño de la casa",
        PacketLabel::MadeForCrew => "Hecha para la cuadrilla",
        PacketLabel::MadeForFirm => "Hecha para la propia compañía",
        PacketLabel::MadeForSupplier => "Hecha para el proveedor del material",
        PacketLabel::MadeForPermitOffice => "Hecha para la oficina de permisos",
        PacketLabel::PacketList => "La lista de esta carpeta",
        PacketLabel::PlanPicture => "Plano, como imagen",
        PacketLabel::PlanDrawing => "Plano, para un programa de dibujo, en pies",
        PacketLabel::RoofModel => "Techo en 3D, en metros",
        PacketLabel::OrderLines => "Líneas del pedido",
        PacketLabel::PriceLines => "Líneas del precio, con costos",
        PacketLabel::PhotoList => "Lista de fotos",
        PacketLabel::FieldBook => "La libreta, anotación por anotación",
        PacketLabel::Survey => "El levantamiento, para eavebook solve",
    }
}

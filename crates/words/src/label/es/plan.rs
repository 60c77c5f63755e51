use crate::label::plan::PlanLabel;

pub(in crate::label) const fn text(label: PlanLabel) -> &'static str {
    match label {
        PlanLabel::Empty => "Empiece en una esquina de afuera, con la casa a su derecha.",
        PlanLabel::Sketch => "Dibujo del contorno hasta aquí",
        PlanLabel::AddLeg => "Agregar lado",
        PlanLabel::ZoomIn => "Acercar",
        PlanLabel::ZoomOut => "Alejar",
        PlanLabel::List => "Lista",
        PlanLabel::Edges => "Orillas",
        PlanLabel::Faces => "Aguas",
        PlanLabel::Items => "Elementos",
        PlanLabel::NoEdges => "No hay orillas todavía. Mida el lado 1.",
        PlanLabel::NoFaces => "No hay aguas todavía. Salen cuando cierra el contorno.",
        PlanLabel::NoItems => "Todavía no hay nada anotado. Una foto se guarda aquí.",
        PlanLabel::Totals => "Totales",
        PlanLabel::WatchOut => "Cuidado",
        PlanLabel::ThisSide => "Este lado",
        PlanLabel::EndSloped => "Agua",
        PlanLabel::EndGable => "Gablete",
        PlanLabel::EndWall => "Pared",
        PlanLabel::Add => "Agregar",
        PlanLabel::AddWhat => "Qué hay aquí",
        PlanLabel::OverhangLayersDeck => "Vuelo, capas, base",
        PlanLabel::Condition => "Estado",
    }
}

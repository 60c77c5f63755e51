use crate::label::plan::PlanLabel;

pub(in crate::label) const fn text(label: PlanLabel) -> &'static str {
    match label {
        PlanLabel::Empty => "Start at any outside corner, building on your right.",
        PlanLabel::Sketch => "Sketch of the outline so far",
        PlanLabel::AddLeg => "Add leg",
        PlanLabel::ZoomIn => "Zoom in",
        PlanLabel::ZoomOut => "Zoom out",
        PlanLabel::List => "List",
        PlanLabel::Edges => "Edges",
        PlanLabel::Faces => "Faces",
        PlanLabel::Items => "Items",
        PlanLabel::NoEdges => "No edges yet. Read leg 1.",
        PlanLabel::NoFaces => "No faces yet. They appear when the outline closes.",
        PlanLabel::NoItems => "Nothing is recorded yet. A photo is kept here.",
        PlanLabel::Totals => "Totals",
        PlanLabel::WatchOut => "Watch out",
        PlanLabel::ThisSide => "This side",
        PlanLabel::EndSloped => "Slope",
        PlanLabel::EndGable => "Gable",
        PlanLabel::EndWall => "Wall",
        PlanLabel::Add => "Add",
        PlanLabel::AddWhat => "What is here",
        PlanLabel::OverhangLayersDeck => "Overhang, layers, deck",
        PlanLabel::Condition => "Condition",
    }
}

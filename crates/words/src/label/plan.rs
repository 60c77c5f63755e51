//! Plan: the outline and the roof, drawn and as lists.

labels! {
    /// Plan: the outline and the roof, drawn and as lists.
    PlanLabel, plan;
    Empty: sentence;
    Sketch;
    AddLeg;
    ZoomIn;
    ZoomOut;
    List;
    Edges: heading;
    Faces: heading;
    Items: heading;
    NoEdges: sentence;
    NoFaces: sentence;
    NoItems: sentence;
    Totals: heading;
    WatchOut: heading;
    ThisSide;
    EndSloped;
    EndGable;
    EndWall;
    Add;
    AddWhat;
    OverhangLayersDeck;
    Condition;
}

//! Changes found at tear-off.

labels! {
    /// Changes found at tear-off.
    ChangeLabel, change;
    Changes: heading;
    NoChanges: sentence;
    AddChange;
    Change;
    UnderWhichFace;
    BadSheets;
    OneMore;
    OneLess;
    Consent;
    ConsentAbout: sentence;
}

//! What every place shows around its own controls.

labels! {
    /// What every place shows around its own controls.
    FrameLabel, frame;
    Places;
    Settings;
    Photo;
    Read;
    WhatsLeft: heading;
    NothingLeft: sentence;
    Go;
    Copies;
    YouWereHere;
    Undo;
    Redo;
    NothingToUndo: sentence;
    NothingToRedo: sentence;
    Close;
    NoAnswer: sentence;
    TryAgain;
    NoJob: sentence;
    WakeRefused: sentence;
}

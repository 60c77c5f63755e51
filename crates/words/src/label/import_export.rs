//! Copies carried by hand as files.

labels! {
    /// Copies carried by hand as files.
    ImportExportLabel, import_export;
    Title: heading;
    How: sentence;
    Save;
    Saving;
    AddFile;
    Adding;
    NotSaved: sentence;
}

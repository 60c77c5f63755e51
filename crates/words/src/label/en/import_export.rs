use crate::label::import_export::ImportExportLabel;

pub(in crate::label) const fn text(label: ImportExportLabel) -> &'static str {
    match label {
        ImportExportLabel::Title => "Copies by file",
        ImportExportLabel::How => {
            "Without a network: save a copy here, carry the file to the other device and add it there. The firm's packet of a job can be added too."
        }
        ImportExportLabel::Save => "Save a copy of all jobs",
        ImportExportLabel::Saving => "Saving a copy…",
        ImportExportLabel::AddFile => "Add file",
        ImportExportLabel::Adding => "Adding the file…",
        ImportExportLabel::NotSaved => "No copy was saved. Save it again.",
    }
}

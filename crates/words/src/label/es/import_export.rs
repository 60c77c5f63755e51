use crate::label::import_export::ImportExportLabel;

pub(in crate::label) const fn text(label: ImportExportLabel) -> &'static str {
    match label {
        ImportExportLabel::Title => "Copias por archivo",
        ImportExportLabel::How => {
            "Sin red: guarde aquí una copia, lleve el archivo al otro aparato y agréguelo allí. También se puede agregar la carpeta de un trabajo para la compañía."
        }
        ImportExportLabel::Save => "Guardar una copia de todos los trabajos",
        ImportExportLabel::Saving => "Guardando una copia…",
        ImportExportLabel::AddFile => "Agregar archivo",
        ImportExportLabel::Adding => "Agregando el archivo…",
        ImportExportLabel::NotSaved => "No se guardó ninguna copia. Guárdela otra vez.",
    }
}

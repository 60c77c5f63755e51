use crate::label::camera::CameraLabel;

pub(in crate::label) const fn text(label: CameraLabel) -> &'static str {
    match label {
        CameraLabel::Title => "Cámara",
        CameraLabel::Finder => "Lo que ve la cámara",
        CameraLabel::Shutter => "Disparar",
        CameraLabel::Done => "Listo",
        CameraLabel::Opening => "Abriendo la cámara.",
        CameraLabel::NotKept => "Esta foto no se guardó. Tómela otra vez.",
        CameraLabel::Refused => {
            "Esta página no puede usar la cámara, o no hay. Tome fotos con la cámara del teléfono y agréguelas aquí."
        }
        CameraLabel::AddPhotos => "Agregar fotos",
    }
}

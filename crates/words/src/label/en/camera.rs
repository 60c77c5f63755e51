use crate::label::camera::CameraLabel;

pub(in crate::label) const fn text(label: CameraLabel) -> &'static str {
    match label {
        CameraLabel::Title => "Camera",
        CameraLabel::Finder => "What the camera sees",
        CameraLabel::Shutter => "Shutter",
        CameraLabel::Done => "Done",
        CameraLabel::Opening => "Opening the camera.",
        CameraLabel::NotKept => "This photo was not kept. Take it again.",
        CameraLabel::Refused => {
            "This page may not use the camera, or there is no camera. Take photos with the camera of the phone, then add them here."
        }
        CameraLabel::AddPhotos => "Add photos",
    }
}

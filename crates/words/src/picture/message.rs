use crate::Quoted;

messages! {
    /// What becomes of a picture file.
    PictureMessage, "picture";
    /// A file without a byte.
    Empty {
        /// Its name.
        file: Quoted,
    } = { file: "walk-01.jpg".into() };
    /// A film.
    Video {
        /// Its name.
        file: Quoted,
    } = { file: "walk-01.jpg".into() };
    /// A text that describes a picture.
    Sidecar {
        /// Its name.
        file: Quoted,
    } = { file: "walk-01.jpg".into() };
    /// A file of another kind.
    NotPicture {
        /// Its name.
        file: Quoted,
    } = { file: "walk-01.jpg".into() };
    /// A photo that is cut short.
    EndMissing {
        /// Its name.
        file: Quoted,
    } = { file: "walk-01.jpg".into() };
    /// A photo in HEIC.
    Heic;
    /// A photo in TIFF.
    Tiff;
    /// A photo with more pixels than are shown.
    TooLarge;
    /// A photo that does not decode.
    Damaged;
    /// A picture that is here already.
    SameAs {
        /// Its name.
        file: Quoted,
        /// The file that came first.
        first: Quoted,
    } = { file: "walk-02.jpg".into(), first: "walk-01.jpg".into() };
    /// A file with too many bytes.
    FileTooLarge {
        /// Its name.
        file: Quoted,
        /// Its size.
        mebibytes: u64,
        /// How many are read.
        most: u64,
    } = { file: "walk-01.jpg".into(), mebibytes: 312, most: 200 };
    /// A file that cannot be read.
    Unreadable {
        /// Its name.
        file: Quoted,
        /// Of the system.
        cause: Quoted,
    } = { file: "walk-01.jpg".into(), cause: "no such file".into() };
}

//! The kind of a file by its first bytes: phones do send HEIC that is named .jpg.

/// What a file is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum PictureKind {
    /// JPEG (ITU-T T.81).
    Jpeg,
    /// PNG (RFC 2083).
    Png,
    /// WebP (RFC 9649).
    Webp,
    /// HEIF (ISO/IEC 23008-12).
    Heic,
    /// TIFF 6.0.
    Tiff,
    /// A film.
    Video,
    /// A text that describes a picture (XMP, ISO 16684-1).
    Sidecar,
    /// Nothing.
    Empty,
    /// None of these.
    Unknown,
}

impl PictureKind {
    /// The kind of a file.
    #[must_use]
    pub fn from_bytes(bytes: &[u8]) -> PictureKind {
        let brand = bytes.get(8..12);
        if bytes.is_empty() {
            PictureKind::Empty
        } else if bytes.starts_with(&[0xff, 0xd8, 0xff]) {
            PictureKind::Jpeg
        } else if bytes.starts_with(b"\x89PNG\r\n\x1a\n") {
            PictureKind::Png
        } else if bytes.starts_with(b"RIFF") {
            match brand {
                Some(b"WEBP") => PictureKind::Webp,
                Some(b"AVI ") => PictureKind::Video,
                Some(_) | None => PictureKind::Unknown,
            }
        } else if bytes.starts_with(b"II*\0") || bytes.starts_with(b"MM\0*") {
            PictureKind::Tiff
        } else if bytes.get(4..8) == Some(b"ftyp") {
            boxed(bytes)
        } else if is_film(bytes) {
            PictureKind::Video
        } else if is_sidecar(bytes) {
            PictureKind::Sidecar
        } else {
            PictureKind::Unknown
        }
    }

    /// In a word.
    #[must_use]
    pub fn name(self) -> &'static str {
        match self {
            PictureKind::Jpeg => "jpeg",
            PictureKind::Png => "png",
            PictureKind::Webp => "webp",
            PictureKind::Heic => "heic",
            PictureKind::Tiff => "tiff",
            PictureKind::Video => "video",
            PictureKind::Sidecar => "sidecar",
            PictureKind::Empty => "empty",
            PictureKind::Unknown => "unknown",
        }
    }

    /// Whether it is kept at all.
    #[must_use]
    pub fn is_picture(self) -> bool {
        match self {
            PictureKind::Jpeg
            | PictureKind::Png
            | PictureKind::Webp
            | PictureKind::Heic
            | PictureKind::Tiff => true,
            PictureKind::Video
            | PictureKind::Sidecar
            | PictureKind::Empty
            | PictureKind::Unknown => false,
        }
    }
}

/// A file of boxes, by its brand; where the brand says only "pictures and film", by the others.
fn boxed(bytes: &[u8]) -> PictureKind {
    const PICTURES: [&[u8]; 7] = [
        b"heic", b"heix", b"hevc", b"heim", b"heis", b"mif1", b"msf1",
    ];
    const OTHERS: [&[u8]; 3] = [b"avif", b"avis", b"crx "];
    match bytes.get(8..12) {
        Some(brand) if PICTURES.contains(&brand) => PictureKind::Heic,
        Some(brand) if OTHERS.contains(&brand) => PictureKind::Unknown,
        Some(_) => PictureKind::Video,
        None => PictureKind::Unknown,
    }
}

/// A film that is not marked by a brand: old QuickTime, Matroska, MPEG.
fn is_film(bytes: &[u8]) -> bool {
    let quicktime = matches!(bytes.get(4..8), Some(b"moov" | b"mdat" | b"wide" | b"pnot"));
    quicktime
        || bytes.starts_with(&[0x1a, 0x45, 0xdf, 0xa3])
        || bytes.starts_with(&[0, 0, 1, 0xba])
        || bytes.starts_with(&[0, 0, 1, 0xb3])
}

/// A packet of XMP, alone in a file.
fn is_sidecar(bytes: &[u8]) -> bool {
    let head = &bytes[..bytes.len().min(2048)];
    let head = head.strip_prefix(b"\xef\xbb\xbf").unwrap_or(head);
    let head = head.trim_ascii_start();
    let holds = |word: &[u8]| head.windows(word.len()).any(|at| at == word);
    head.starts_with(b"<") && (holds(b"<?xpacket") || holds(b"<x:xmpmeta") || holds(b"<rdf:RDF"))
}

#[cfg(test)]
mod tests {
    use super::PictureKind;

    #[test]
    fn a_file_is_known_by_its_first_bytes() {
        for (bytes, kind) in [
            (&b""[..], "empty"),
            (b"\xff\xd8\xff\xe0", "jpeg"),
            (b"\x89PNG\r\n\x1a\n", "png"),
            (b"RIFF\x10\0\0\0WEBPVP8 ", "webp"),
            (b"RIFF\x10\0\0\0AVI LIST", "video"),
            (b"\0\0\0\x18ftypheic\0\0\0\0", "heic"),
            (b"\0\0\0\x18ftypmif1\0\0\0\0", "heic"),
            (b"\0\0\0\x18ftypqt  \0\0\0\0", "video"),
            (b"\0\0\0\x18ftypmp42\0\0\0\0", "video"),
            (b"II*\0\x08\0\0\0", "tiff"),
            (b"MM\0*\0\0\0\x08", "tiff"),
            (
                b"\xef\xbb\xbf <x:xmpmeta xmlns:x='adobe:ns:meta/'>",
                "sidecar",
            ),
            (b"<svg xmlns='http://www.w3.org/2000/svg'/>", "unknown"),
            (b"a text", "unknown"),
            (b"\xff\xd8", "unknown"),
        ] {
            assert_eq!(PictureKind::from_bytes(bytes).name(), kind, "{bytes:?}");
        }
    }
}

//! What a photo file is, by its first bytes: never by its name or by what a browser says.

/// The largest photo that is kept: 64 MiB.
pub const LARGEST_PHOTO: usize = 64 * 1024 * 1024;

/// A kind of picture file that a phone makes.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Media {
    /// JPEG: starts with FF D8 FF (ITU-T T.81).
    Jpeg,
    /// PNG: the eight-byte signature of RFC 2083.
    Png,
    /// WebP: RIFF with the form type WEBP (RFC 9649).
    Webp,
    /// HEIF with HEVC pictures: an `ftyp` box that names a brand of ISO/IEC 23008-12.
    Heic,
}

impl Media {
    /// The kind of a file; none: no picture that is kept.
    #[must_use]
    pub fn from_bytes(bytes: &[u8]) -> Option<Media> {
        if bytes.starts_with(&[0xff, 0xd8, 0xff]) {
            Some(Media::Jpeg)
        } else if bytes.starts_with(b"\x89PNG\r\n\x1a\n") {
            Some(Media::Png)
        } else if bytes.starts_with(b"RIFF") && bytes.get(8..12) == Some(b"WEBP") {
            Some(Media::Webp)
        } else if is_heic(bytes) {
            Some(Media::Heic)
        } else {
            None
        }
    }

    /// Its name on the web.
    #[must_use]
    pub fn name(self) -> &'static str {
        match self {
            Media::Jpeg => "image/jpeg",
            Media::Png => "image/png",
            Media::Webp => "image/webp",
            Media::Heic => "image/heic",
        }
    }
}

/// A kind of sound file that a phone records.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Sound {
    /// WebM: an EBML document (RFC 8794 has its first four bytes).
    Webm,
    /// Ogg: starts with `OggS` (RFC 3533).
    Ogg,
    /// MPEG-4: an `ftyp` box (ISO/IEC 14496-12).
    Mp4,
}

impl Sound {
    /// The kind of a file; none: no sound that is kept. A film may begin the same: what is asked
    /// here is only what a recorder of sound made.
    #[must_use]
    pub fn from_bytes(bytes: &[u8]) -> Option<Sound> {
        if bytes.starts_with(&[0x1a, 0x45, 0xdf, 0xa3]) {
            Some(Sound::Webm)
        } else if bytes.starts_with(b"OggS") {
            Some(Sound::Ogg)
        } else if bytes.get(4..8) == Some(b"ftyp") && !is_heic(bytes) {
            Some(Sound::Mp4)
        } else {
            None
        }
    }

    /// Its name on the web.
    #[must_use]
    pub fn name(self) -> &'static str {
        match self {
            Sound::Webm => "audio/webm",
            Sound::Ogg => "audio/ogg",
            Sound::Mp4 => "audio/mp4",
        }
    }
}

/// The first box is `ftyp`, and its major brand or one of its compatible ones is HEVC's.
fn is_heic(bytes: &[u8]) -> bool {
    if bytes.get(4..8) != Some(b"ftyp") {
        return false;
    }
    let length = bytes
        .first_chunk()
        .map_or(0, |size| u32::from_be_bytes(*size)) as usize;
    let brands = bytes.get(8..length.min(bytes.len())).unwrap_or_default();
    brands
        .chunks_exact(4)
        .any(|brand| matches!(brand, b"heic" | b"heix" | b"heim" | b"heis"))
}

#[cfg(test)]
mod tests {
    use super::{Media, Sound};

    #[test]
    fn a_sound_is_known_by_its_first_bytes_and_a_picture_is_none() {
        assert_eq!(
            Sound::from_bytes(b"\x1a\x45\xdf\xa3rest"),
            Some(Sound::Webm)
        );
        assert_eq!(Sound::from_bytes(b"OggS\0rest"), Some(Sound::Ogg));
        assert_eq!(
            Sound::from_bytes(b"\0\0\0\x14ftypM4A rest"),
            Some(Sound::Mp4)
        );
        assert_eq!(Sound::from_bytes(b"\0\0\0\x10ftypheic\0\0\0\0"), None);
        assert_eq!(Sound::from_bytes(b"\xff\xd8\xff\xe0rest"), None);
    }

    #[test]
    fn a_picture_is_known_by_its_first_bytes() {
        assert_eq!(
            Media::from_bytes(b"\xff\xd8\xff\xe0rest"),
            Some(Media::Jpeg)
        );
        assert_eq!(
            Media::from_bytes(b"\x89PNG\r\n\x1a\nrest"),
            Some(Media::Png)
        );
        assert_eq!(
            Media::from_bytes(b"RIFF\x10\0\0\0WEBPVP8 "),
            Some(Media::Webp)
        );
        assert_eq!(
            Media::from_bytes(b"\0\0\0\x18ftypheic\0\0\0\0mif1heic"),
            Some(Media::Heic)
        );
        assert_eq!(
            Media::from_bytes(b"\0\0\0\x18ftypmif1\0\0\0\0heicmiaf"),
            Some(Media::Heic)
        );
    }

    #[test]
    fn what_only_looks_like_one_is_none() {
        for bytes in [
            &b""[..],
            b"\xff\xd8",
            b"RIFF\x10\0\0\0WAVEfmt ",
            b"\0\0\0\x18ftypmp42\0\0\0\0isomiso2",
            b"\xff\xff\xff\xffftyp",
            b"<svg xmlns='http://www.w3.org/2000/svg'/>",
        ] {
            assert_eq!(Media::from_bytes(bytes), None, "{bytes:?}");
        }
    }
}

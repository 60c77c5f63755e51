//! What a HEIF file says of its primary picture: size upright, and the block of camera data that
//! describes it and not another picture of the file (ISO/IEC 14496-12, 23008-12). Its points are
//! not decoded.

use std::collections::BTreeMap;
use std::ops::Range;

/// Bytes of an item's id where a box is of its first version, and of a later one.
const NARROW: usize = 2;
const WIDE: usize = 4;

/// Points across and down, as the primary picture is to be seen; none where it is cut short or the
/// file says nothing of it.
pub fn upright_size(bytes: &[u8]) -> Option<[u32; 2]> {
    let meta = Meta::read(bytes)?;
    let mut own = meta.places.get(&meta.primary?)?.iter();
    if own.any(|place| place.end > bytes.len()) {
        return None;
    }
    let mut size = None;
    for property in meta.properties.get(&meta.primary?)? {
        let (name, at) = meta.shapes.get(property.checked_sub(1)?)?;
        let body = bytes.get(at.clone())?;
        match name {
            b"ispe" => size = Some([u32_at(body, 4)?, u32_at(body, 8)?]),
            b"clap" => {
                let side = |at| u32_at(body, at)?.checked_div(u32_at(body, at + 4)?);
                size = Some([side(0)?, side(8)?]);
            }
            b"irot" if body.first()? % 2 == 1 => size = size.map(|[across, down]| [down, across]),
            _ => {}
        }
    }
    size
}

/// The camera data of the primary picture, from its byte order mark on.
pub fn camera_block(bytes: &[u8]) -> Option<Vec<u8>> {
    let meta = Meta::read(bytes)?;
    let mut blocks = meta.kinds.iter().filter(|(_, kind)| *kind == b"Exif");
    let of_primary = |item: &u32| {
        let told = meta.describes.get(item);
        told.is_some_and(|told| meta.primary.is_some_and(|primary| told.contains(&primary)))
    };
    let item = match blocks.clone().find(|(item, _)| of_primary(item)) {
        Some((item, _)) => item,
        // A file that says of no block what it describes.
        None if meta.describes.is_empty() => blocks.next()?.0,
        None => return None,
    };
    let mut block = Vec::new();
    for place in meta.places.get(item)? {
        block.extend_from_slice(bytes.get(place.clone())?);
    }
    let skip = usize::try_from(u32_at(&block, 0)?).ok()?.checked_add(4)?;
    block.get(skip..).map(<[u8]>::to_vec)
}

type Name = [u8; 4];

/// The part of the file that names its items.
#[derive(Default)]
struct Meta {
    primary: Option<u32>,
    kinds: BTreeMap<u32, Name>,
    /// Where the bytes of each item lie in the file.
    places: BTreeMap<u32, Vec<Range<usize>>>,
    /// Which items a block of camera data describes.
    describes: BTreeMap<u32, Vec<u32>>,
    /// Properties of an item, from 1, in order.
    properties: BTreeMap<u32, Vec<usize>>,
    shapes: Vec<(Name, Range<usize>)>,
}

impl Meta {
    fn read(bytes: &[u8]) -> Option<Meta> {
        let mut all = boxes(bytes, 0..bytes.len());
        let (_, meta) = all.find(|(name, _)| name == b"meta")?;
        let parts: Vec<_> = boxes(bytes, meta.start.checked_add(4)?..meta.end).collect();
        let part = |wanted: &Name| {
            let found = parts.iter().find(|(name, _)| name == wanted);
            found.map(|(_, at)| at.clone())
        };
        let mut told = Meta::default();
        if let Some(at) = part(b"pitm") {
            let mut body = Body::of(bytes, &at);
            let version = body.version()?;
            told.primary = body.id(if version > 0 { WIDE } else { NARROW });
        }
        let own = part(b"idat").map_or(0, |at| at.start);
        part(b"iinf").and_then(|at| told.read_kinds(bytes, &at));
        part(b"iloc").and_then(|at| told.read_places(bytes, &at, own));
        part(b"iref").and_then(|at| told.read_references(bytes, &at));
        part(b"iprp").and_then(|at| told.read_properties(bytes, &at));
        Some(told)
    }

    fn read_kinds(&mut self, bytes: &[u8], at: &Range<usize>) -> Option<()> {
        let wide = *bytes.get(at.start)? > 0;
        let first = at.start + if wide { 8 } else { 6 };
        for (name, at) in boxes(bytes, first..at.end) {
            let mut body = Body::of(bytes, &at);
            let version = body.version()?;
            if &name == b"infe" && version >= 2 {
                let item = body.id(if version > 2 { WIDE } else { NARROW })?;
                body.skip(2);
                let kind = body.take(4)?.try_into().ok()?;
                self.kinds.insert(item, kind);
            }
        }
        Some(())
    }

    fn read_places(&mut self, bytes: &[u8], at: &Range<usize>, own: usize) -> Option<()> {
        let mut body = Body::of(bytes, at);
        let version = body.version()?;
        let sizes = body.number(2)?;
        let wide = |nibble: u32| usize::try_from(sizes >> nibble & 0xf).unwrap_or(0);
        let (offset, length, base, index) = (wide(12), wide(8), wide(4), wide(0));
        let index = if version > 0 { index } else { 0 };
        let count = body.number(if version < 2 { 2 } else { 4 })?;
        for _ in 0..count {
            let item = body.id(if version >= 2 { WIDE } else { NARROW })?;
            let way = if version > 0 {
                body.number(2)? & 0xf
            } else {
                0
            };
            body.skip(2);
            let base = body.number(base)?;
            let mut places = Vec::new();
            for _ in 0..body.number(2)? {
                body.skip(index);
                let from = base.checked_add(body.number(offset)?)?;
                let from = match way {
                    0 => usize::try_from(from).ok()?,
                    1 => own.checked_add(usize::try_from(from).ok()?)?,
                    _ => return None,
                };
                let length = usize::try_from(body.number(length)?).ok()?;
                places.push(from..from.checked_add(length)?);
            }
            self.places.insert(item, places);
        }
        Some(())
    }

    fn read_references(&mut self, bytes: &[u8], at: &Range<usize>) -> Option<()> {
        let is_wide = *bytes.get(at.start)? > 0;
        let bytes_of_id = if is_wide { WIDE } else { NARROW };
        for (name, at) in boxes(bytes, at.start + 4..at.end) {
            let mut body = Body::of(bytes, &at);
            let from = body.id(bytes_of_id)?;
            for _ in 0..body.number(2)? {
                let to = body.id(bytes_of_id)?;
                if &name == b"cdsc" {
                    self.describes.entry(from).or_default().push(to);
                }
            }
        }
        Some(())
    }

    fn read_properties(&mut self, bytes: &[u8], at: &Range<usize>) -> Option<()> {
        for (name, at) in boxes(bytes, at.clone()) {
            if &name == b"ipco" {
                self.shapes = boxes(bytes, at).collect();
            } else if &name == b"ipma" {
                let long = bytes.get(at.start + 3)? & 1 == 1;
                let mut body = Body::of(bytes, &at);
                let version = body.version()?;
                for _ in 0..body.number(4)? {
                    let item = body.id(if version > 0 { WIDE } else { NARROW })?;
                    let mut held = Vec::new();
                    for _ in 0..body.number(1)? {
                        let property = if long {
                            body.number(2)? & 0x7fff
                        } else {
                            body.number(1)? & 0x7f
                        };
                        held.push(usize::try_from(property).ok()?);
                    }
                    self.properties.insert(item, held);
                }
            }
        }
        Some(())
    }
}

/// Boxes one after another, each with where its body lies; ends at the first that does not fit.
fn boxes(bytes: &[u8], within: Range<usize>) -> impl Iterator<Item = (Name, Range<usize>)> {
    let mut at = within.start;
    let end = within.end.min(bytes.len());
    std::iter::from_fn(move || {
        let head = bytes
            .get(at..at.checked_add(8)?)
            .filter(|_| at + 8 <= end)?;
        let name: Name = head.get(4..8)?.try_into().ok()?;
        let (size, skip) = match u32_at(head, 0)? {
            0 => (end - at, 8),
            1 => {
                let long = bytes.get(at + 8..at + 16)?.try_into().ok()?;
                (usize::try_from(u64::from_be_bytes(long)).ok()?, 16)
            }
            size => (usize::try_from(size).ok()?, 8),
        };
        let stop = at.checked_add(size).filter(|_| size >= skip)?;
        let body = at + skip..stop.min(end);
        // A box that runs past the end is read as far as it goes, and is the last.
        at = stop.min(end);
        Some((name, body))
    })
}

/// Numbers of a box, one after another.
struct Body<'a> {
    rest: &'a [u8],
}

impl<'a> Body<'a> {
    fn of(bytes: &'a [u8], at: &Range<usize>) -> Body<'a> {
        Body {
            rest: bytes.get(at.clone()).unwrap_or_default(),
        }
    }

    fn take(&mut self, count: usize) -> Option<&'a [u8]> {
        let (taken, rest) = self.rest.split_at_checked(count)?;
        self.rest = rest;
        Some(taken)
    }

    fn skip(&mut self, count: usize) {
        self.rest = self.rest.get(count..).unwrap_or_default();
    }

    /// A number of so many bytes, at most 8; of none it is 0.
    fn number(&mut self, count: usize) -> Option<u64> {
        let taken = self.take(count.min(8))?;
        Some(
            taken
                .iter()
                .fold(0, |number, byte| number << 8 | u64::from(*byte)),
        )
    }

    /// The id of an item, of so many bytes.
    fn id(&mut self, bytes: usize) -> Option<u32> {
        u32::try_from(self.number(bytes)?).ok()
    }

    /// The version of a box, past its flags.
    fn version(&mut self) -> Option<u8> {
        self.take(4)?.first().copied()
    }
}

fn u32_at(bytes: &[u8], at: usize) -> Option<u32> {
    let four = bytes.get(at..at.checked_add(4)?)?;
    Some(u32::from_be_bytes(four.try_into().ok()?))
}

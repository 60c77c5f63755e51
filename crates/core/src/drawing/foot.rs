//! The foot of a plan: the street side, north, a key of its lines, faces by number, pitches
//! without a mark, what was left off.

use super::house::{Hand, House, Words};
use super::lay::{Drawing, North, Text, TextRole};
use super::lines::{Line, Piece, Sight};
use super::room::{Room, Sheet};
use super::words::{WORDS, number_of, width_of};
use crate::roof::EdgeKind;

/// Rows of what stands side by side, from the left.
struct Rows {
    sheet: Sheet,
    size: f64,
    x: f64,
    /// The middle of the row.
    y: f64,
}

/// Between two things in a row.
const GAP: f64 = 16.0;

impl Rows {
    /// Room for something so wide in the row, or in the next one: its left end.
    fn next(&mut self, width: f64) -> [f64; 2] {
        let left = self.size;
        if self.x > left && self.x + width > self.sheet.width - self.size {
            self.x = left;
            self.y += self.size * 1.7;
        }
        let at = [self.x, self.y];
        self.x += width + GAP;
        at
    }

    /// The width of a row.
    fn most(&self) -> f64 {
        self.sheet.width - 2.0 * self.size
    }

    fn new_line(&mut self) {
        if self.x > self.size {
            self.x = self.size;
            self.y += self.size * 1.7;
        }
    }

    fn text(&self, at: [f64; 2], words: String) -> Text {
        let wide = width_of(&words, WORDS, self.size);
        Text {
            at,
            turned: 0.0,
            size: self.size,
            look: TextRole::Foot,
            room: Room::level([at[0] + wide / 2.0, at[1]], [wide, self.size]),
            words,
        }
    }
}

/// Writes the foot and makes the drawing as much higher.
pub(super) fn write(house: &House, words: &Words, sheet: Sheet, drawing: &mut Drawing) {
    let size = sheet.small(0.92);
    let top = drawing.height;
    let mut middle = [sheet.width / 2.0, top + sheet.letters * 0.4];
    // North stands beside it.
    let aside = if house.north.is_some() { 4.4 } else { 0.6 };
    let first = middle[1];
    for line in broken(
        words.front,
        sheet.letters,
        sheet.width - aside * sheet.letters,
    ) {
        let wide = width_of(&line, WORDS, sheet.letters);
        drawing.texts.push(Text {
            words: line,
            at: middle,
            turned: 0.0,
            size: sheet.letters,
            look: TextRole::Side,
            room: Room::level(middle, [wide, sheet.letters]),
        });
        middle[1] += sheet.letters * 1.3;
    }
    middle[1] -= sheet.letters * 1.3;
    drawing.north = house.north.map(|turned| North {
        at: [sheet.width - 2.2 * sheet.letters, first],
        turned: turned.in_degrees(),
        letter: words.north,
        size: sheet.letters,
    });
    let mut rows = Rows {
        sheet,
        size,
        x: size,
        y: middle[1] + sheet.letters * if house.north.is_some() { 2.4 } else { 1.9 },
    };
    key(house, words, &mut rows, drawing);
    rows.new_line();
    for place in 0..house.faces.len() {
        let number = number_of(place);
        let by_number = drawing
            .texts
            .iter()
            .any(|text| text.look == TextRole::Face(place) && text.words == number);
        if by_number {
            let said = format!("{number} = {}", house.faces[place].name);
            let at = rows.next(width_of(&said, WORDS, size));
            drawing.texts.push(rows.text(at, said));
        }
    }
    rows.new_line();
    for said in rises(house, words, drawing) {
        put_sentence(&said, &mut rows, drawing);
    }
    let (edges, faces) = (drawing.unnamed_edges.len(), drawing.unnamed_faces.len());
    if edges + faces > 0 {
        put_sentence(&(words.left_off)(edges, faces), &mut rows, drawing);
    }
    drawing.height = rows.y - size * 0.4;
}

/// The pitches of those faces that have a name on the drawing but no room for their slope, by rise.
fn rises(house: &House, words: &Words, drawing: &Drawing) -> Vec<String> {
    let without: Vec<usize> = (0..house.faces.len())
        .filter(|place| drawing.slopes.iter().all(|slope| slope.face != *place))
        .collect();
    let Some(first) = without
        .first()
        .map(|place| house.faces[*place].rise.as_str())
    else {
        return Vec::new();
    };
    if house.faces.iter().all(|face| face.rise == first) {
        return vec![(words.every_face)(first)];
    }
    let mut by_rise: Vec<(&str, Vec<&str>)> = Vec::new();
    for place in without {
        let name = drawing
            .texts
            .iter()
            .find(|text| text.look == TextRole::Face(place));
        let Some(name) = name.map(|text| text.words.as_str()) else {
            continue;
        };
        let rise = house.faces[place].rise.as_str();
        match by_rise.iter_mut().find(|(same, _)| *same == rise) {
            Some((_, names)) => names.push(name),
            None => by_rise.push((rise, vec![name])),
        }
    }
    by_rise
        .into_iter()
        .map(|(rise, names)| format!("{rise} / 12: {}", names.join(", ")))
        .collect()
}

/// A sentence, broken between words where the row ends.
fn put_sentence(said: &str, rows: &mut Rows, drawing: &mut Drawing) {
    let most = rows.most();
    for line in broken(said, rows.size, most) {
        let at = rows.next(most);
        drawing.texts.push(rows.text(at, line));
        rows.new_line();
    }
}

/// A sentence in lines that are at most so wide, broken between words.
fn broken(said: &str, size: f64, most: f64) -> Vec<String> {
    let mut lines = vec![String::new()];
    for word in said.split(' ') {
        let longer = match lines.last() {
            Some(line) if !line.is_empty() => format!("{line} {word}"),
            Some(_) | None => word.to_owned(),
        };
        if longer == word || width_of(&longer, WORDS, size) <= most {
            lines.pop();
            lines.push(longer);
        } else {
            lines.push(word.to_owned());
        }
    }
    lines
}

/// A sample of each kind of line that is drawn, with its word.
fn key(house: &House, words: &Words, rows: &mut Rows, drawing: &mut Drawing) {
    let drawn = |kind: Option<EdgeKind>| house.edges.iter().any(|edge| edge.kind == kind);
    let by_hand = |hand: Hand| house.edges.iter().any(|edge| edge.hand == hand);
    let mut samples: Vec<(Option<EdgeKind>, Hand, &str)> = std::iter::once(None)
        .chain(EdgeKind::ALL.map(Some))
        .filter(|kind| drawn(*kind))
        .map(|kind| (kind, Hand::Read, (words.kind)(kind)))
        .collect();
    for (hand, said) in [
        (Hand::WorkedOut, words.worked_out),
        (Hand::Suspect, words.suspect),
    ] {
        if by_hand(hand) {
            samples.push((None, hand, said));
        }
    }
    for (kind, hand, said) in samples {
        let (ends, at) = sample(rows, said);
        drawing.key.push(Line {
            name: None,
            kind,
            hand,
            ends,
            out: [0.0, -1.0],
            pieces: vec![Piece {
                ends,
                sight: Sight::Visible,
            }],
        });
        put_beside_sample(said, at, rows, drawing);
    }
    let hidden = drawing.lines.iter().flat_map(|line| &line.pieces);
    let hidden = hidden.into_iter().any(|piece| piece.sight == Sight::Hidden);
    if hidden || !drawing.walls.is_empty() {
        let (ends, at) = sample(rows, words.under);
        drawing.key_under = Some(ends);
        put_beside_sample(words.under, at, rows, drawing);
    }
}

/// Length of a sample's line, and the gap between it and its words.
const SAMPLE: [f64; 2] = [30.0, 9.0];

/// Where a sample's line lies and its words begin.
fn sample(rows: &mut Rows, said: &str) -> ([[f64; 2]; 2], [f64; 2]) {
    let [long, clear] = SAMPLE;
    let wide = long + clear + width_of(said, WORDS, rows.size);
    let at = rows.next(wide.min(rows.most()));
    let end = [at[0] + long, at[1]];
    ([at, end], [end[0] + clear, at[1]])
}

/// The words of a sample, on more lines where one is too short.
fn put_beside_sample(said: &str, at: [f64; 2], rows: &mut Rows, drawing: &mut Drawing) {
    let most = rows.most() - SAMPLE.iter().sum::<f64>();
    let lines = broken(said, rows.size, most);
    let last = lines.len() - 1;
    for (place, line) in lines.into_iter().enumerate() {
        drawing.texts.push(rows.text([at[0], rows.y], line));
        if place < last {
            rows.y += rows.size * 1.3;
        }
    }
}

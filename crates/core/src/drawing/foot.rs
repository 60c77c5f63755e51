//! The foot of a plan: the street side, north, a key of its lines, faces by number, what was left off.

use super::house::{Hand, House, Words};
use super::lay::{Drawing, Look, North, Text};
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
            look: Look::Foot,
            room: Room::level([at[0] + wide / 2.0, at[1]], [wide, self.size]),
            words,
        }
    }
}

/// Writes the foot and makes the drawing as much higher.
pub(super) fn write(house: &House, words: &Words, sheet: Sheet, drawing: &mut Drawing) {
    let size = sheet.letters * 0.92;
    let top = drawing.height;
    let middle = [sheet.width / 2.0, top + sheet.letters * 0.4];
    let wide = width_of(words.front, WORDS, sheet.letters);
    drawing.texts.push(Text {
        words: words.front.to_owned(),
        at: middle,
        turned: 0.0,
        size: sheet.letters,
        look: Look::Side,
        room: Room::level(middle, [wide, sheet.letters]),
    });
    drawing.north = house.north.map(|turned| North {
        at: [sheet.width - 2.2 * sheet.letters, middle[1]],
        turned,
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
            .any(|text| text.look == Look::Face(place) && text.words == number);
        if by_number {
            let said = format!("{number} = {}", house.faces[place].name);
            let at = rows.next(width_of(&said, WORDS, size));
            drawing.texts.push(rows.text(at, said));
        }
    }
    rows.new_line();
    let (edges, faces) = (drawing.unnamed_edges.len(), drawing.unnamed_faces.len());
    if edges + faces > 0 {
        put_sentence(&(words.left_off)(edges, faces), &mut rows, drawing);
    }
    drawing.height = rows.y - size * 0.4;
}

/// A sentence, broken between words where the row ends.
fn put_sentence(said: &str, rows: &mut Rows, drawing: &mut Drawing) {
    let most = rows.sheet.width - 2.0 * rows.size;
    let mut line = String::new();
    for word in said.split(' ') {
        let longer = format!("{line}{}{word}", if line.is_empty() { "" } else { " " });
        if !line.is_empty() && width_of(&longer, WORDS, rows.size) > most {
            let at = rows.next(most);
            drawing.texts.push(rows.text(at, line));
            rows.new_line();
            line = word.to_owned();
        } else {
            line = longer;
        }
    }
    let at = rows.next(most);
    drawing.texts.push(rows.text(at, line));
    rows.new_line();
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
                sight: Sight::Seen,
            }],
        });
        drawing.texts.push(rows.text(at, said.to_owned()));
    }
    let hidden = drawing.lines.iter().flat_map(|line| &line.pieces);
    let hidden = hidden.into_iter().any(|piece| piece.sight == Sight::Hidden);
    if hidden || !drawing.walls.is_empty() {
        let (ends, at) = sample(rows, words.under);
        drawing.key_under = Some(ends);
        drawing.texts.push(rows.text(at, words.under.to_owned()));
    }
}

/// Where a sample's line lies and its word begins.
fn sample(rows: &mut Rows, said: &str) -> ([[f64; 2]; 2], [f64; 2]) {
    const LONG: f64 = 30.0;
    const CLEAR: f64 = 9.0;
    let at = rows.next(LONG + CLEAR + width_of(said, WORDS, rows.size));
    let end = [at[0] + LONG, at[1]];
    ([at, end], [end[0] + CLEAR, at[1]])
}

//! Tables as CSV (RFC 4180): UTF-8, CR LF, fixed digits.

use crate::differences::Difference;
use crate::edition::Lang;
use crate::job::Job;
use crate::named::{self, Parts};
use crate::said;
use crate::words;
use csv::{Terminator, WriterBuilder};
use eavebook_core::check::State;
use eavebook_core::price::Price;
use eavebook_core::takeoff::Takeoff;
use eavebook_core::units::{Length, Tape};
use uuid::Uuid;

/// A text cell. A table program takes one that begins so for a formula: an apostrophe before it
/// keeps it a text.
fn text(cell: &str) -> String {
    if cell.starts_with(['=', '+', '-', '@', '\t', '\r']) {
        format!("'{cell}")
    } else {
        cell.to_owned()
    }
}

/// A number with three decimals; nothing where it is not known.
fn number(value: Option<f64>) -> String {
    let rounded = |value: f64| format!("{:.3}", (value * 1000.0).round() / 1000.0 + 0.0);
    value.map(rounded).unwrap_or_default()
}

fn feet(value: Option<Length>) -> String {
    number(value.map(Length::in_feet))
}

fn table(head: &str, rows: impl IntoIterator<Item = Vec<String>>) -> Vec<u8> {
    let mut writer = WriterBuilder::new()
        .terminator(Terminator::CRLF)
        .from_writer(Vec::new());
    // Writing into memory cannot fail, and every row has the cells of its head.
    let _ = writer.write_record(head.split(','));
    for row in rows {
        let _ = writer.write_record(row);
    }
    writer.into_inner().unwrap_or_default()
}

/// `faces.csv`.
pub fn faces(job: &Job, parts: &Parts) -> Vec<u8> {
    let bodies = job
        .laid
        .survey
        .as_ref()
        .map(|survey| survey.bodies.as_slice());
    let bodies = bodies.unwrap_or_default();
    let rows = parts.faces.iter().map(|named| {
        let face = named.face;
        let body = bodies.get(face.body).map(|body| body.id.as_str());
        vec![
            text(&words::face(named, Lang::En)),
            text(body.unwrap_or_default()),
            (face.leg + 1).to_string(),
            number(Some(face.pitch.in_12())),
            number(Some(face.plan_area.in_square_feet())),
            number(Some(face.area.in_square_feet())),
            number(Some(named.area.sigma.in_square_feet())),
        ]
    });
    table(
        "face,body,leg,pitch_in_12,plan_area_sqft,area_sqft,area_sigma_sqft",
        rows,
    )
}

/// `edges.csv`.
pub fn edges(parts: &Parts) -> Vec<u8> {
    let rows = parts.edges.iter().map(|edge| {
        vec![
            text(&edge.name),
            words::edge_kind(edge.kind, Lang::En).to_lowercase(),
            feet(edge.length),
            feet(edge.sigma),
            text(&words::faces_along(edge, &parts.faces, Lang::En)),
        ]
    });
    table("edge,kind,length_ft,length_sigma_ft,faces", rows)
}

/// `readings.csv`: every reading and every slope read, struck ones too.
pub fn readings(job: &Job) -> Vec<u8> {
    let sigma_of = |entry: &str| {
        let body = named::body(&job.standing())?;
        let reading = body.readings.iter().find(|read| read.id == entry)?;
        let usual = eavebook_core::outline::default_sigma(reading.value);
        Some(reading.sigma.unwrap_or(usual).in_feet())
    };
    let lengths = job.book.readings.iter().map(|read| {
        let state = said::state_of(job, read);
        let value = Tape::read(&read.text).ok().map(|tape| tape.length());
        vec![
            read.entry.to_string(),
            text(&read.thing.name()),
            text(&read.text),
            feet(value),
            number(sigma_of(&read.entry.to_string())),
            text(&said::how(read)),
            state.word().to_owned(),
            struck_by(read.struck.as_ref()),
            text(&read.local_time),
            said::photos_of(job, &read.thing).join(" "),
        ]
    });
    let slopes = job.book.pitches.iter().map(|read| {
        let state = if read.struck.is_some() {
            State::Struck
        } else {
            job.standing().slope_state(read.leg)
        };
        vec![
            read.entry.to_string(),
            format!("pitch of leg {}", read.leg),
            text(&said::slope(&read.read)),
            String::new(),
            String::new(),
            text(said::slope_how(&read.read)),
            state.word().to_owned(),
            struck_by(read.struck.as_ref()),
            text(&read.local_time),
            String::new(),
        ]
    });
    table(
        "reading,thing,value_text,value_ft,sigma_ft,how,state,struck_by,local_time,photos",
        lengths.chain(slopes),
    )
}

fn struck_by(struck: Option<&eavebook_core::book::fold::SupersededBy>) -> String {
    struck
        .map(|struck| struck.by.to_string())
        .unwrap_or_default()
}

/// `items.csv`: what stands out of the roof.
pub fn items(job: &Job, parts: &Parts) -> Vec<u8> {
    let rows = said::items(job, parts).into_iter().map(|item| {
        let face = item.face.map(|face| words::face(face, Lang::En));
        vec![
            format!("{} {}", item.kind.word(), item.number),
            item.kind.word().to_owned(),
            text(&face.unwrap_or_default()),
            text(&item.size.unwrap_or_default()),
            item.state.word().to_owned(),
            item.photos.join(" "),
        ]
    });
    table("item,kind,face,size_text,state,photos", rows)
}

/// `order.csv`.
pub fn order_lines(takeoff: &Takeoff) -> Vec<u8> {
    let rows = takeoff
        .order
        .iter()
        .zip(1..)
        .map(|(line, number): (_, usize)| {
            vec![
                number.to_string(),
                text(&line.item.to_string()),
                line.pack.name().to_owned(),
                line.packs.to_string(),
                String::new(),
                text(&said::needed(line, Lang::En)),
            ]
        });
    table("line,item,unit,quantity,colour,note", rows)
}

/// `price.csv`.
pub fn price_lines(price: &Price) -> Vec<u8> {
    let money = |amount: Option<eavebook_core::units::Money>| {
        amount
            .map(|amount| amount.as_decimal().to_string())
            .unwrap_or_default()
    };
    let rows = price
        .lines
        .iter()
        .zip(1..)
        .map(|(line, number): (_, usize)| {
            vec![
                number.to_string(),
                text(&line.item.to_string()),
                line.unit.name().to_owned(),
                line.quantity.to_string(),
                money(line.unit_price),
                money(line.amount),
                "USD".to_owned(),
            ]
        });
    table("line,item,unit,quantity,rate,amount,currency", rows)
}

/// `photos.csv`: each photo with the file of its copy, where there is one.
pub fn photo_list(photos: &[crate::said::PhotoRow]) -> Vec<u8> {
    let rows = photos.iter().map(|photo| {
        vec![
            photo.number.to_string(),
            photo.file.clone().unwrap_or_default(),
            photo
                .side
                .map(|side| side.word().to_owned())
                .unwrap_or_default(),
            String::new(),
            text(&photo.shows.clone().unwrap_or_default()),
            photo.state.to_owned(),
            photo.sha256.clone(),
        ]
    });
    table("photo,file,side,distance,shows,state,sha256", rows)
}

/// `differences.csv`: what the version before said otherwise; nothing where it said the same.
pub fn differences(rows: &[Difference]) -> Option<Vec<u8>> {
    let cells = rows.iter().map(|row| {
        let why: Vec<String> = row.why.iter().map(Uuid::to_string).collect();
        vec![
            text(&row.thing),
            text(&row.before),
            text(&row.now),
            why.join(" "),
        ]
    });
    (!rows.is_empty()).then(|| table("thing,before,now,why", cells))
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    #[test]
    fn a_text_that_a_table_program_would_work_out_gets_an_apostrophe() {
        for cell in ["=1+1", "+1", "-leg", "@sum", "\tx"] {
            assert_eq!(text(cell), format!("'{cell}"));
        }
        assert_eq!(text("leg 4 -1"), "leg 4 -1");
    }

    proptest! {
        #[test]
        fn what_is_written_reads_back_cell_for_cell_and_never_as_a_formula(
            cells in proptest::collection::vec(".{0,12}", 2)
        ) {
            let written = table("a,b", [cells.iter().map(|cell| text(cell)).collect()]);
            prop_assert!(written.ends_with(b"\r\n"));
            let mut reader = csv::Reader::from_reader(written.as_slice());
            let row = reader.records().next().unwrap().unwrap();
            for (read, cell) in row.iter().zip(&cells) {
                prop_assert!(!read.starts_with(['=', '+', '-', '@', '\t']));
                prop_assert_eq!(read.strip_prefix('\'').unwrap_or(read), cell.strip_prefix('\'').unwrap_or(cell));
            }
        }
    }
}

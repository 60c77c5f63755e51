//! Presses keys and books readings through the boundary, as a screen does, and says on stdout
//! what was answered, a line each, until it is killed.
//!
//! `key-presser DIR`. Lines: `pressed N` for the N-th press, `read ID`. Each reading is two
//! digits, `ft`, `Book it`, all set by the count of presses, so that a look at the book can tell
//! what must stand half typed.

use eavebook_app::App;
use eavebook_app::reply::{JobView, Reply};
use eavebook_app::request::{FieldBookRequest, Key, TodayRequest};
use eavebook_core::book::kinds::Thing;
use std::error::Error;
use std::io::Write;
use std::path::Path;
use uuid::Uuid;

fn main() -> Result<(), Box<dyn Error>> {
    let dir = std::env::args().nth(1).ok_or("name a folder")?;
    let app = App::open(Path::new(&dir))?;
    let job = job(&app)?;
    loop {
        let thing = Some(Thing::Leg { leg: 1 });
        let opened = whole(app.handle(FieldBookRequest::OpenPad {
            job,
            thing,
            blind: false,
        }))?;
        let mut press = opened.pad.open.ok_or("the keypad is not open")?.press;
        loop {
            let answer = app.handle(FieldBookRequest::Press {
                job,
                press,
                key: key(press),
                since_ms: None,
            });
            press += 1;
            if let Reply::Pad(pad) = &answer
                && pad.refused.is_none()
            {
                say(&format!("pressed {press}"))?;
            } else {
                let read = whole(answer)?
                    .pad
                    .read_back
                    .ok_or("nothing is read back")?
                    .reading;
                say(&format!("pressed {press}"))?;
                say(&format!("read {read}"))?;
                break;
            }
        }
    }
}

/// The job that is there, or a new one.
fn job(app: &App) -> Result<Uuid, Box<dyn Error>> {
    if let Reply::Today(today) = app.handle(TodayRequest::Today)
        && let Some(stop) = today.stops.first()
    {
        return Ok(stop.job);
    }
    let address = "12 Invented Lane (invented)".to_owned();
    Ok(whole(app.handle(TodayRequest::StartJob { address }))?.job)
}

fn whole(reply: Reply) -> Result<JobView, Box<dyn Error>> {
    let job = reply.into_job().map_err(|other| format!("{other:?}"))?;
    Ok(*job)
}

/// Tens and ones of the reading under way, then its unit, then to book it.
fn key(press: u32) -> Key {
    let reading = press / 4;
    match press % 4 {
        0 => Key::Digit {
            digit: 1 + (reading % 9) as u8,
        },
        1 => Key::Digit {
            digit: (reading % 10) as u8,
        },
        2 => Key::Whole,
        _ => Key::BookIt,
    }
}

fn say(line: &str) -> std::io::Result<()> {
    std::io::stdout().write_all(format!("{line}\n").as_bytes())?;
    std::io::stdout().flush()
}

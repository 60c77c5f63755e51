//! Makes packets of the pretend house and says on stdout what was made, a line each, until it is
//! killed.
//!
//! `packet-maker DIR [once]`. Lines: `opened`, then `made ID` for each; between two of them something
//! is booked, so that the next is another version. `once`: one packet, then `took N`,
//! microseconds.

use eavebook_app::reply::Reply;
use eavebook_app::request::{Edition, JobFileRequest, PlanRequest};
use eavebook_app::{App, demo};
use eavebook_core::book::kinds::EndKind;
use std::error::Error;
use std::io::Write;
use std::path::Path;
use std::time::Instant;

fn main() -> Result<(), Box<dyn Error>> {
    let mut words = std::env::args().skip(1);
    let dir = words.next().ok_or("name a folder")?;
    let once = words.next().is_some();
    let app = App::open(Path::new(&dir))?;
    let job = demo::book(&app)?.job;
    say("opened")?;
    // What the leg is said to be goes on from where the program before was killed.
    let mut end = EndKind::Wall;
    loop {
        let began = Instant::now();
        let edition = Edition::Crew;
        let Reply::Packets(view) = app.handle(JobFileRequest::MakePacket { job, edition }) else {
            return Err("no packet was made".into());
        };
        say(&format!("made {}", view.made.unwrap_or_default()))?;
        if once {
            return Ok(say(&format!("took {}", began.elapsed().as_micros()))?);
        }
        end = if end == EndKind::Wall {
            EndKind::Gable
        } else {
            EndKind::Wall
        };
        let said = app.handle(PlanRequest::LegEnd { job, leg: 1, end });
        if !matches!(said, Reply::Job(_)) {
            return Err(format!("{said:?}").into());
        }
    }
}

fn say(line: &str) -> std::io::Result<()> {
    std::io::stdout().write_all(format!("{line}\n").as_bytes())?;
    std::io::stdout().flush()
}

//! kill -9 between key presses that go through the boundary: what was answered is half typed or
//! booked, and never both or neither.

use crate::kill::{Noise, said_until_killed};
use eavebook_app::App;
use eavebook_app::reply::{JobView, Reply};
use eavebook_app::request::{FieldBookRequest, TodayRequest};
use std::collections::BTreeSet;
use std::path::Path;
use std::process::Command;

fn presser(dir: &Path) -> Command {
    let mut command = Command::new(env!("CARGO_BIN_EXE_key-presser"));
    command.arg(dir);
    command
}

/// The one job of a book; none when the kill came before it was begun.
fn job(dir: &Path) -> Option<JobView> {
    let app = App::open(dir).unwrap();
    let Reply::Today(today) = app.handle(TodayRequest::Today) else {
        unreachable!()
    };
    let job = today.stops.first()?.job;
    let thing = Some(eavebook_core::book::kinds::Thing::Leg { leg: 1 });
    let Reply::Job(job) = app.handle(FieldBookRequest::OpenPad {
        job,
        thing,
        blind: false,
    }) else {
        unreachable!()
    };
    Some(*job)
}

/// What must stand in the slots after so many presses, by the order in which keys are pressed.
fn half_typed(presses: u32) -> String {
    let reading = presses / 4;
    let digits = format!("{}{}", 1 + reading % 9, reading % 10);
    digits[..(presses % 4).min(2) as usize].to_owned()
}

#[test]
fn every_answered_key_is_half_typed_or_booked_after_thirty_kills() {
    let mut noise = Noise(0x0eaf_eb00_c000_0003);
    let dir = tempfile::tempdir().unwrap();
    let (mut pressed, mut read) = (0_u32, BTreeSet::new());
    for round in 1..=30 {
        for line in said_until_killed(presser(dir.path()), &mut noise) {
            match line.split_once(' ').unwrap() {
                ("pressed", number) => pressed = number.parse().unwrap(),
                ("read", id) => {
                    read.insert(id.parse::<uuid::Uuid>().unwrap());
                }
                _ => unreachable!("{line}"),
            }
        }
        let Some(job) = job(dir.path()) else {
            assert_eq!((pressed, read.len()), (0, 0), "round {round}");
            continue;
        };
        let pad = job.pad.open.unwrap();
        assert!(
            pad.press >= pressed,
            "round {round}: {} of {pressed} presses",
            pad.press
        );
        let typed: String = pad.slots.iter().map(|slot| slot.typed.as_str()).collect();
        assert_eq!(
            typed,
            half_typed(pad.press),
            "round {round}, press {}",
            pad.press
        );
        let story = job.readings.iter().flat_map(|thing| &thing.story);
        let there: BTreeSet<uuid::Uuid> = story.map(|told| told.entry).collect();
        assert!(read.is_subset(&there), "round {round}");
        assert_eq!(
            there.len() as u32,
            pad.press / 4,
            "round {round}: booked and half typed"
        );
    }
    println!(
        "30 kills, {pressed} keys and {} readings answered, 0 lost",
        read.len()
    );
}

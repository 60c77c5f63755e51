//! kill -9 while a packet is made: no half file under a packet's name, the book as it was, and what
//! was said to be made is there and proved.

use crate::kill::Noise;
use eavebook_app::App;
use eavebook_app::reply::Reply;
use eavebook_app::request::{Edition, JobFileRequest, TodayRequest};
use std::collections::BTreeSet;
use std::io::{BufRead, BufReader};
use std::path::Path;
use std::process::{Command, Stdio};
use std::time::Duration;

/// Makes a packet, books something, makes the next, until it is killed.
fn maker(dir: &Path) -> Command {
    let mut command = Command::new(env!("CARGO_BIN_EXE_packet-maker"));
    command.arg(dir);
    command
}

/// From when a kill is counted.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum From {
    /// The first word of the program.
    Opened,
    /// The first sight of a file being written.
    Writing,
}

/// What it said before it was killed, so long after a moment.
fn killed_while_making(dir: &Path, from: From, after: Duration) -> Vec<String> {
    let mut child = maker(dir).stdout(Stdio::piped()).spawn().unwrap();
    let mut out = BufReader::new(child.stdout.take().unwrap());
    let mut first = String::new();
    out.read_line(&mut first).unwrap();
    assert_eq!(first.trim(), "opened");
    let folder = dir.join("packets");
    while from == From::Writing && !names(&folder).iter().any(|name| name.ends_with(".part")) {
        std::thread::sleep(Duration::from_micros(200));
    }
    std::thread::sleep(after);
    child.kill().unwrap();
    child.wait().unwrap();
    out.lines().map(|line| line.unwrap()).collect()
}

#[test]
fn thirty_kills_while_packets_are_made_leave_no_half_file_and_lose_none_that_was_said() {
    let dir = tempfile::tempdir().unwrap();
    let mut noise = Noise(0x0eaf_eb00_c000_0004);
    let mut said: BTreeSet<String> = BTreeSet::new();
    let (mut begun, mut unsaid) = (0, 0);
    // One run unharmed tells about how long a packet takes here, so that kills fall all over it.
    let whole = Command::new(maker(dir.path()).get_program())
        .arg(dir.path())
        .arg("once")
        .output()
        .unwrap();
    assert!(whole.status.success(), "{whole:?}");
    let words = String::from_utf8(whole.stdout).unwrap();
    let took = words.lines().find_map(|line| line.strip_prefix("took "));
    let took: u64 = took.unwrap().parse().unwrap();
    said.extend(made_in(&words));
    for round in 1..=30 {
        // Setting the papers takes most of the time, writing them is over in no time.
        let (from, within) = match round % 2 {
            0 => (From::Opened, 3 * took),
            _ => (From::Writing, 10_000),
        };
        let after = Duration::from_micros(noise.below(within));
        let lines = killed_while_making(dir.path(), from, after);
        said.extend(made_in(&lines.join("\n")));
        let folder = dir.path().join("packets");
        let parts = names(&folder)
            .into_iter()
            .filter(|name| name.ends_with(".part"));
        begun += parts.count();

        let app = App::open(dir.path()).unwrap();
        let Reply::Today(today) = app.handle(TodayRequest::Today) else {
            unreachable!()
        };
        let job = today.stops[0].job;
        let Reply::Packets(view) = app.handle(JobFileRequest::Packets { job }) else {
            unreachable!()
        };
        let listed: BTreeSet<String> = view
            .packets
            .iter()
            .map(|packet| packet.packet.clone())
            .collect();
        assert!(
            said.is_subset(&listed),
            "round {round}: a packet that was said is lost"
        );
        unsaid += listed.len() - said.len();
        for packet in &view.packets {
            let name = packet.file.as_ref().unwrap();
            let proved = eavebook_packet::check(&folder.join(name)).unwrap();
            assert_eq!(proved.id, packet.packet, "round {round}");
        }
        // A file that no entry names was swept as the book was opened.
        let whole = names(&folder)
            .into_iter()
            .filter(|name| name.ends_with(".zip"));
        assert_eq!(whole.count(), listed.len(), "round {round}");
        said = listed;
    }
    println!(
        "30 kills, {} packets made and proved, {begun} half files none of them under a packet's \
         name, {unsaid} booked and not yet said",
        said.len()
    );
    assert!(begun > 0, "no kill fell into the writing of a packet");
    // And on it goes.
    let app = App::open(dir.path()).unwrap();
    let Reply::Today(today) = app.handle(TodayRequest::Today) else {
        unreachable!()
    };
    let job = today.stops[0].job;
    let edition = Edition::Crew;
    let told = app.handle(JobFileRequest::MakePacket { job, edition });
    assert!(matches!(told, Reply::Packets(_)), "{told:?}");
}

fn made_in(words: &str) -> Vec<String> {
    let made = words.lines().filter_map(|line| line.strip_prefix("made "));
    made.map(str::to_owned).collect()
}

fn names(folder: &Path) -> Vec<String> {
    let there = std::fs::read_dir(folder).into_iter().flatten();
    there
        .map(|file| file.unwrap().file_name().to_string_lossy().into_owned())
        .collect()
}

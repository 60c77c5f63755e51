//! A disk as it may be found after a cut: what it had been told to keep, and of the rest nothing,
//! all, a torn piece or any part in any order. Built of the system calls of a program, recorded with
//! their bytes by strace.

use crate::noise::Noise;
use std::collections::BTreeMap;
use std::path::Path;

/// A call, its file by its path within the book.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Call {
    Write(String, u64, Vec<u8>),
    Truncate(String, u64),
    Rename(String, String),
    Unlink(String),
    /// A file, or a folder (`""` is the book's own).
    Sync(String),
    Said(String),
}

/// Files with their bytes, and what the disk was not told to keep yet.
#[derive(Clone, Debug, Default)]
pub struct Disk {
    kept: BTreeMap<String, Vec<u8>>,
    pending: Vec<Call>,
}

/// What of the pending calls is found after a cut.
#[derive(Clone, Copy, Debug)]
pub enum Found {
    Nothing,
    Everything,
    /// All but the last, of which half.
    Torn,
    /// Each sector by itself or not.
    Some(u64),
}

/// Whether syncs do what they say.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Syncs {
    Honest,
    Ignored,
}

const SECTOR: usize = 512;

fn folder(path: &str) -> &str {
    path.rsplit_once('/').map_or("", |(folder, _)| folder)
}

impl Disk {
    /// The files of a folder and of those in it.
    pub fn of(dir: &Path) -> Disk {
        let mut disk = Disk::default();
        let mut folders = vec![String::new()];
        while let Some(within) = folders.pop() {
            for file in std::fs::read_dir(dir.join(&within)).unwrap() {
                let file = file.unwrap();
                let name = format!("{within}{}", file.file_name().to_string_lossy());
                if file.path().is_dir() {
                    folders.push(format!("{name}/"));
                } else {
                    disk.kept.insert(name, std::fs::read(file.path()).unwrap());
                }
            }
        }
        disk
    }

    pub fn call(&mut self, call: &Call, syncs: Syncs) {
        let Call::Sync(what) = call else {
            self.pending.push(call.clone());
            return;
        };
        if syncs == Syncs::Ignored {
            return;
        }
        let kept = |one: &Call| match one {
            Call::Write(file, ..) | Call::Truncate(file, _) => file == what,
            Call::Rename(file, _) | Call::Unlink(file) => folder(file) == what,
            Call::Sync(_) | Call::Said(_) => false,
        };
        let (now, later) = std::mem::take(&mut self.pending)
            .into_iter()
            .partition(kept);
        self.pending = later;
        let now: Vec<Call> = now;
        now.iter().for_each(|one| apply(&mut self.kept, one));
    }

    pub fn found(&self, found: Found) -> BTreeMap<String, Vec<u8>> {
        let mut files = self.kept.clone();
        let last = self.pending.len().saturating_sub(1);
        for (place, call) in self.pending.iter().enumerate() {
            match (found, call) {
                (Found::Nothing, _) => {}
                (Found::Everything, call) => apply(&mut files, call),
                (Found::Torn, Call::Write(file, at, bytes)) if place == last => {
                    let half = bytes.len() / 2 / SECTOR * SECTOR;
                    let torn = Call::Write(file.clone(), *at, bytes[..half].to_vec());
                    apply(&mut files, &torn);
                }
                (Found::Torn, call) => {
                    if place != last {
                        apply(&mut files, call);
                    }
                }
                (Found::Some(seed), Call::Write(file, at, bytes)) => {
                    let mut noise = Noise(seed + place as u64);
                    for (sector, piece) in bytes.chunks(SECTOR).enumerate() {
                        if noise.below(2) == 0 {
                            let at = at + (sector * SECTOR) as u64;
                            apply(&mut files, &Call::Write(file.clone(), at, piece.to_vec()));
                        }
                    }
                }
                (Found::Some(seed), call) => {
                    if Noise(seed + place as u64).below(2) == 0 {
                        apply(&mut files, call);
                    }
                }
            }
        }
        files
    }
}

fn apply(files: &mut BTreeMap<String, Vec<u8>>, call: &Call) {
    match call {
        Call::Write(file, at, bytes) => {
            let there = files.entry(file.clone()).or_default();
            let at = *at as usize;
            if there.len() < at + bytes.len() {
                there.resize(at + bytes.len(), 0);
            }
            there[at..at + bytes.len()].copy_from_slice(bytes);
        }
        Call::Truncate(file, size) => {
            files
                .entry(file.clone())
                .or_default()
                .resize(*size as usize, 0);
        }
        Call::Rename(from, to) => {
            if let Some(bytes) = files.remove(from) {
                files.insert(to.clone(), bytes);
            }
        }
        Call::Unlink(file) => {
            files.remove(file);
        }
        Call::Sync(_) | Call::Said(_) => {}
    }
}

/// Text that strace wrote in hex.
fn bytes(hex: &str) -> Vec<u8> {
    hex.split("\\x")
        .filter(|digits| !digits.is_empty())
        .map(|digits| u8::from_str_radix(&digits[..2], 16).unwrap())
        .collect()
}

fn text(hex: &str) -> String {
    if hex.contains("\\x") {
        String::from_utf8(bytes(hex)).unwrap()
    } else {
        hex.to_owned()
    }
}

/// What strace is to write down of the calls of a program and all its threads.
pub const TRACE: [&str; 7] = [
    "-f",
    "-y",
    "-xx",
    "-s",
    "4000000",
    "-e",
    "trace=write,pwrite64,ftruncate,fsync,fdatasync,rename,renameat,renameat2,unlink,unlinkat",
];

/// The calls of a log, each whole: one that another thread's cut in two counts where it ended.
fn whole(log: &str) -> Vec<String> {
    let mut begun: BTreeMap<&str, &str> = BTreeMap::new();
    let mut calls = Vec::new();
    for line in log.lines() {
        let Some((thread, call)) = line.trim_start().split_once(' ') else {
            continue;
        };
        let call = call.trim_start();
        if let Some(first) = call.strip_suffix(" <unfinished ...>") {
            begun.insert(thread, first);
        } else if let Some(rest) = call.strip_prefix("<... ") {
            let (Some(first), Some((_, rest))) = (begun.remove(thread), rest.split_once('>'))
            else {
                continue;
            };
            calls.push(format!("{first}{}", rest.trim_start()));
        } else {
            calls.push(call.to_owned());
        }
    }
    calls
}

/// The calls that a log of strace tells of files within a folder, in order, and what was said.
pub fn calls(log: &str, dir: &Path) -> Vec<Call> {
    let root = std::fs::canonicalize(dir).unwrap();
    let root = root.to_string_lossy().into_owned();
    let within = |path: &str| {
        let path = text(path);
        let path = path.strip_prefix(&root)?;
        Some(path.trim_start_matches('/').to_owned())
    };
    let mut ends: BTreeMap<String, u64> = BTreeMap::new();
    whole(log)
        .iter()
        .filter_map(|call| {
            let (name, rest) = call.split_once('(')?;
            assert!(!rest.ends_with("= -1"), "{call:.80}");
            let quoted: Vec<&str> = rest.split('"').skip(1).step_by(2).collect();
            let on = || Some(rest.split_once('<')?.1.split_once('>')?.0);
            match name {
                "write" if rest.starts_with("1<") => {
                    Some(Call::Said(text(quoted[0]).trim_end().to_owned()))
                }
                "write" => {
                    let file = within(on()?)?;
                    let bytes = bytes(quoted[0]);
                    let end = ends.entry(file.clone()).or_default();
                    let at = *end;
                    *end += bytes.len() as u64;
                    Some(Call::Write(file, at, bytes))
                }
                "pwrite64" => {
                    let at = rest
                        .rsplit_once(')')?
                        .0
                        .rsplit_once(", ")?
                        .1
                        .parse()
                        .unwrap();
                    Some(Call::Write(within(on()?)?, at, bytes(quoted[0])))
                }
                "ftruncate" => {
                    let size = rest
                        .rsplit_once(')')?
                        .0
                        .rsplit_once(", ")?
                        .1
                        .parse()
                        .unwrap();
                    Some(Call::Truncate(within(on()?)?, size))
                }
                "fsync" | "fdatasync" => Some(Call::Sync(within(on()?)?)),
                "unlink" | "unlinkat" => Some(Call::Unlink(within(quoted[0])?)),
                _ => {
                    let from = within(quoted[0])?;
                    ends.remove(&from);
                    Some(Call::Rename(from, within(quoted[1])?))
                }
            }
        })
        .collect()
}

//! `eavebook photo`: what it reads of photos, a line of JSON each.

use crate::refusal::Refusal;
use clap::Args;
use eavebook_core::book::entry::sha256_hex;
use eavebook_packet::picture::{
    CameraData, LONGEST_FILE, OffsetFrom, Outcome, PictureKind, PictureMetadata, read_metadata,
};
use serde::Serialize;
use std::fs::{self, File};
use std::io::{self, Read, Write};
use std::path::{Path, PathBuf};

/// Say what is read of photos: a line of JSON each, in the order given.
///
/// A line says what the file is by its first bytes, what comes of it (shown, shown in part, kept,
/// refused) with a sentence, and what the camera wrote into it: how the points lie, when, how far
/// that is ahead of Greenwich, where, which way it looked. Files are only read.
#[derive(Args)]
#[command(after_help = "Example:
  eavebook photo --sheets copies walk-01.jpg walk-02.jpg")]
pub struct Photo {
    /// Write a copy of each that can be shown into this folder, made of its points alone: no camera
    /// data, name or place goes along.
    #[arg(long, value_name = "DIR")]
    sheets: Option<PathBuf>,
    /// The photos.
    #[arg(value_name = "FILE", required = true)]
    files: Vec<PathBuf>,
}

/// One line.
#[derive(Clone, Debug, Serialize)]
struct Line {
    file: String,
    sha256: Option<String>,
    bytes: Option<u64>,
    kind: &'static str,
    outcome: &'static str,
    say: Option<String>,
    upright_size: Option<[u32; 2]>,
    orientation: Option<u32>,
    taken_local: Option<String>,
    offset: Option<String>,
    offset_from: Option<&'static str>,
    gps: Option<Gps>,
    direction: Option<Looked>,
    focal_35mm: Option<u32>,
    same_as: Option<String>,
    maybe_edited_of: Option<String>,
    sheet: Option<String>,
}

#[derive(Clone, Copy, Debug, Serialize)]
struct Gps {
    lat: f64,
    lon: f64,
    alt: Option<f64>,
}

#[derive(Clone, Copy, Debug, Serialize)]
struct Looked {
    deg: f64,
    #[serde(rename = "ref")]
    reference: Option<char>,
}

impl Photo {
    /// Prints a line a file.
    pub fn run(self) -> Result<(), Refusal> {
        if let Some(dir) = &self.sheets {
            fs::create_dir_all(dir).map_err(|why| cannot_write(dir, &why))?;
        }
        let mut out = io::stdout().lock();
        let mut said: Vec<Line> = Vec::new();
        for path in &self.files {
            let line = line(path, self.sheets.as_deref(), &said)?;
            serde_json::to_writer(&mut out, &line)
                .map_err(io::Error::from)
                .and_then(|()| writeln!(out))
                .and_then(|()| out.flush())
                .map_err(|why| Refusal::new(&format!("the answer cannot be printed: {why}")))?;
            said.push(line);
        }
        Ok(())
    }
}

fn cannot_write(path: &Path, why: &io::Error) -> Refusal {
    Refusal::new(&format!(
        "{} cannot be written: {why}; name a folder of your own with --sheets",
        path.display()
    ))
}

fn line(path: &Path, sheets: Option<&Path>, before: &[Line]) -> Result<Line, Refusal> {
    let name = path.file_name().unwrap_or(path.as_os_str());
    let name = name.to_string_lossy().into_owned();
    let bytes = match read(path) {
        Ok(bytes) => bytes,
        Err(why) => return Ok(unread(name.clone(), why.say(&name))),
    };
    let sha256 = sha256_hex(&bytes);
    let same = before.iter().find(|line| {
        line.sha256.as_ref() == Some(&sha256) && line.outcome != Outcome::Refused.words()
    });
    if let Some(same) = same {
        let first = same.same_as.clone().unwrap_or_else(|| same.file.clone());
        return Ok(Line {
            say: Some(format!(
                "The file {name} holds the same picture as {first}. It is booked once."
            )),
            outcome: "already here",
            file: name,
            same_as: Some(first),
            ..same.clone()
        });
    }
    let told = read_metadata(&name, &bytes);
    let sheet = match (sheets, &told.sheet) {
        (Some(dir), Some(jpeg)) => {
            let copy = format!("{sha256}.jpg");
            let path = dir.join(&copy);
            fs::write(&path, jpeg).map_err(|why| cannot_write(&path, &why))?;
            Some(copy)
        }
        (Some(_) | None, _) => None,
    };
    let edited = before.iter().find(|line| may_be_one(line, &told));
    Ok(Line {
        maybe_edited_of: edited.map(|line| line.file.clone()),
        sheet,
        bytes: Some(bytes.len() as u64),
        sha256: Some(sha256),
        ..of(name, told)
    })
}

/// The same second at the shutter and the same shape within 5 %: one may be made from the other.
fn may_be_one(line: &Line, told: &PictureMetadata) -> bool {
    let shape = |[across, down]: [u32; 2]| f64::from(across) / f64::from(down);
    let alike = line
        .upright_size
        .zip(told.upright_size)
        .is_some_and(|(one, other)| (shape(one) / shape(other) - 1.0).abs() <= 0.05);
    line.same_as.is_none()
        && alike
        && line.taken_local.is_some()
        && line.taken_local == told.camera.taken_local
}

fn of(file: String, told: PictureMetadata) -> Line {
    let CameraData {
        orientation,
        taken_local,
        offset,
        offset_from,
        position,
        direction,
        focal_35mm,
        ..
    } = told.camera;
    Line {
        file,
        sha256: None,
        bytes: None,
        kind: told.kind.name(),
        outcome: told.outcome.words(),
        say: told.say,
        upright_size: told.upright_size,
        orientation,
        taken_local,
        offset,
        offset_from: offset_from.map(OffsetFrom::words),
        gps: position.map(|at| Gps {
            lat: at.latitude,
            lon: at.longitude,
            alt: at.altitude,
        }),
        direction: direction.map(|looked| Looked {
            deg: looked.degrees,
            reference: looked.reference,
        }),
        focal_35mm,
        same_as: None,
        maybe_edited_of: None,
        sheet: None,
    }
}

/// Why a file was not read.
enum Unread {
    TooLong(u64),
    Fault(io::Error),
}

impl Unread {
    fn say(&self, name: &str) -> String {
        match self {
            Unread::TooLong(bytes) => format!(
                "The file {name} has {} MiB; photos have at most 200. Nothing was booked.",
                bytes.div_ceil(1024 * 1024)
            ),
            Unread::Fault(why) => {
                format!("The file {name} cannot be read: {why}. Nothing was booked.")
            }
        }
    }
}

fn read(path: &Path) -> Result<Vec<u8>, Unread> {
    let file = File::open(path).map_err(Unread::Fault)?;
    let length = file.metadata().map_err(Unread::Fault)?.len();
    if length > LONGEST_FILE {
        return Err(Unread::TooLong(length));
    }
    let mut bytes = Vec::new();
    // A pipe has no length.
    file.take(LONGEST_FILE + 1)
        .read_to_end(&mut bytes)
        .map_err(Unread::Fault)?;
    match bytes.len() as u64 {
        length if length > LONGEST_FILE => Err(Unread::TooLong(length)),
        _ => Ok(bytes),
    }
}

fn unread(file: String, say: String) -> Line {
    let told = PictureMetadata {
        kind: PictureKind::Unknown,
        outcome: Outcome::Refused,
        say: Some(say),
        upright_size: None,
        camera: CameraData::default(),
        sheet: None,
    };
    of(file, told)
}

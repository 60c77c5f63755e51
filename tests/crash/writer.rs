//! Books without end and says on stdout what is done, a line each, until it is killed.
//!
//! `book-writer DIR MANNER [COUNT]`. Lines: `key N`, `booked ID`, `photo SHA256 ID`. A line is
//! said when the store has returned, and not before; the manners that break this are there to
//! show that the checks see it.

use eavebook_core::book::clock::Hlc;
use eavebook_core::book::entry::{Entry, Stamp};
use eavebook_core::book::kinds::{
    Followed, HowRead, Kind, PhotoFrom, PhotoTaken, Reading, TapeMarks, Thing,
};
use eavebook_store::{Device, DraftAfter, Store};
use std::error::Error;
use std::io::Write;
use std::path::Path;
use std::process::ExitCode;
use std::time::{Duration, SystemTime};
use uuid::Uuid;

const JOB: Uuid = Uuid::from_u128(7);
const DEVICE: Uuid = Uuid::from_u128(1);
const PAD: &str = "pad";

/// How it works.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Manner {
    /// Keys, bookings and photos by turns.
    Honest,
    /// The same, but each line is said before the store is asked.
    SaysFirst,
    /// The same, but a booking and its draft are two transactions.
    TwoSteps,
    /// Bookings alone.
    Bookings,
    /// Key presses alone.
    Keys,
    /// Photos alone.
    Photos,
}

fn main() -> ExitCode {
    match work() {
        Ok(()) => ExitCode::SUCCESS,
        Err(why) => {
            eprintln!("{why}");
            ExitCode::from(2)
        }
    }
}

fn work() -> Result<(), Box<dyn Error>> {
    let mut words = std::env::args().skip(1);
    let dir = words.next().ok_or("name a folder")?;
    let manner = match words.next().as_deref() {
        Some("honest") => Manner::Honest,
        Some("says-first") => Manner::SaysFirst,
        Some("two-steps") => Manner::TwoSteps,
        Some("bookings") => Manner::Bookings,
        Some("keys") => Manner::Keys,
        Some("photos") => Manner::Photos,
        Some(_) | None => return Err("name a manner".into()),
    };
    let count = words.next().map_or(Ok(u64::MAX), |count| count.parse())?;
    let mut writer = Writer::open(Path::new(&dir), manner)?;
    for turn in 0..count {
        match (manner, turn % 5) {
            (Manner::Keys, _) => writer.key()?,
            (Manner::Bookings, _) => writer.booking()?,
            (Manner::Photos, _) => writer.photo()?,
            (Manner::Honest | Manner::SaysFirst | Manner::TwoSteps, 0..=2) => writer.key()?,
            (Manner::Honest | Manner::SaysFirst | Manner::TwoSteps, 3) => writer.booking()?,
            (Manner::Honest | Manner::SaysFirst | Manner::TwoSteps, _) => writer.photo()?,
        }
    }
    Ok(())
}

struct Writer {
    book: Store,
    manner: Manner,
    /// Key presses so far, as the draft has them.
    keys: u64,
    /// Readings so far, as the draft has them.
    booked: u64,
}

impl Writer {
    fn open(dir: &Path, manner: Manner) -> Result<Writer, Box<dyn Error>> {
        let mut book = Store::open(dir)?;
        if book.device().is_none() {
            book.set_device(Device {
                id: DEVICE,
                incarnation: DEVICE,
                name: "a phone".into(),
                author: "A. Person".into(),
                settings: "{}".into(),
                dseq: 0,
                hlc: Hlc::default(),
            })?;
        }
        let (keys, booked) = match book.draft(JOB, PAD)? {
            Some(text) => serde_json::from_str(&text)?,
            None => (0, 0),
        };
        Ok(Writer {
            book,
            manner,
            keys,
            booked,
        })
    }

    fn draft(&self) -> String {
        format!("[{},{}]", self.keys, self.booked)
    }

    fn key(&mut self) -> Result<(), Box<dyn Error>> {
        self.keys += 1;
        let (line, draft) = (format!("key {}", self.keys), self.draft());
        self.do_and_say(&line, |book, _| book.keep_draft(JOB, PAD, &draft))
    }

    fn booking(&mut self) -> Result<(), Box<dyn Error>> {
        self.booked += 1;
        let entry = self.entry(&Kind::Reading(Reading {
            thing: Thing::Leg { leg: 1 },
            text: format!("{} ft", self.booked),
            tape: TapeMarks::FeetInches,
            how: HowRead::Taped,
            followed: Followed::EaveEdge,
            blind: false,
        }))?;
        let (line, draft) = (format!("booked {}", entry.id), self.draft());
        self.do_and_say(&line, |book, manner| {
            let becomes = DraftAfter::Becomes {
                book: JOB,
                name: PAD,
                text: &draft,
            };
            if manner == Manner::TwoSteps {
                book.append(&[entry], DraftAfter::AsItIs)?;
                std::thread::sleep(Duration::from_millis(2));
                book.keep_draft(JOB, PAD, &draft)
            } else {
                book.append(&[entry], becomes).map(|_| ())
            }
        })
    }

    fn photo(&mut self) -> Result<(), Box<dyn Error>> {
        let turn = self.book.device().map_or(0, |device| device.dseq);
        let bytes = turn.to_be_bytes().repeat(2_000);
        let sha256 = eavebook_core::book::entry::sha256_hex(&bytes);
        let entry = self.entry(&Kind::Photo(PhotoTaken {
            sha256: sha256.clone(),
            size: bytes.len() as u64,
            media: "image/jpeg".into(),
            of: None,
            from: PhotoFrom::Camera,
            heading: None,
            tilt: None,
            place: None,
            distance: None,
        }))?;
        self.do_and_say(&format!("photo {sha256} {}", entry.id), |book, _| {
            book.put_photo(&mut bytes.as_slice())?;
            book.append(&[entry], DraftAfter::AsItIs).map(|_| ())
        })
    }

    fn entry(&mut self, kind: &Kind) -> Result<Entry, Box<dyn Error>> {
        let now = SystemTime::now().duration_since(SystemTime::UNIX_EPOCH)?;
        let turn = self.book.next_turn(now.as_millis() as u64)?;
        let id = uuid::Builder::from_u128(u128::from(turn.dseq))
            .with_version(uuid::Version::SortRand)
            .with_variant(uuid::Variant::RFC4122)
            .into_uuid();
        let stamp = Stamp {
            id,
            book: JOB,
            device: DEVICE,
            incarnation: DEVICE,
            dseq: turn.dseq,
            author: "A. Person".into(),
            hlc: turn.hlc,
            local_time: "2026-05-02T14:41:07-05:00".into(),
        };
        Ok(Entry::new(stamp, kind, Vec::new()))
    }

    fn do_and_say<E: Error + 'static>(
        &mut self,
        line: &str,
        act: impl FnOnce(&mut Store, Manner) -> Result<(), E>,
    ) -> Result<(), Box<dyn Error>> {
        let say = || std::io::stdout().write_all(format!("{line}\n").as_bytes());
        if self.manner == Manner::SaysFirst {
            say()?;
            act(&mut self.book, self.manner)?;
        } else {
            act(&mut self.book, self.manner)?;
            say()?;
        }
        Ok(std::io::stdout().flush()?)
    }
}

//! From a job to its packet: each part made alone, so that what fails costs itself and no other.

use crate::bag::{self, Bag};
use crate::contents::{
    Bytes, EntryCount, FileRow, PacketFile, PacketList, Role, Totals, media_type,
};
use crate::differences::differences;
use crate::edition::{Edition, Lang, MoneyOn, PaperKind, PaperRow, holds, papers_of};
use crate::exports;
use crate::job::{Freeze, Job, Photos};
use crate::lack::Lack;
use crate::named::Parts;
use crate::not_known::{NotKnown, not_known};
use crate::papers::{self, PaperInput};
use crate::plan;
use crate::said::{self, PhotoRow};
use crate::sheet::{self, PhotoCopyError, Whole};
use crate::start_here::{Start, start_here};
use crate::typeset::{self, Letters, NotSet, PLAN, PLAN_ES, PLAN_HALF, Pictures, SOLID};
use crate::write::{NotMade, write_whole};
use eavebook_core::book::digest::digest;
use eavebook_core::book::entry::sha256_hex;
use eavebook_core::book::freeze::house_entries;
use eavebook_core::drawing::Sheet;
use std::path::{Path, PathBuf};

/// A packet that was made.
#[derive(Clone, Debug)]
pub struct Made {
    /// Its id: SHA-256 of its manifest, 64 hex digits.
    pub id: String,
    /// Its name, which holds the first 12 of them.
    pub file_name: String,
    /// Where it lies.
    pub path: PathBuf,
    /// Its bytes.
    pub bytes: u64,
    /// What it lacks, each with why and what to do.
    pub lacks: Vec<Lack>,
    /// What is not known of the house.
    pub not_known: Vec<String>,
    /// Areas and lengths.
    pub totals: Totals,
    /// What lies in it.
    pub files: Vec<FileRow>,
}

/// Makes the packet of a job for a reader and puts it into a folder, whole or not at all.
///
/// The same entries under the same freeze make the same bytes. A paper or a photo that cannot be
/// made is named in what the packet lacks; the rest is made.
///
/// # Errors
/// `NoRoom`, `Disk`: nothing stands under its name then.
pub fn make(
    job: &Job,
    edition: Edition,
    freeze: &Freeze,
    photos: &dyn Photos,
    dir: &Path,
) -> Result<Made, NotMade> {
    make_with(&Letters::shipped(), job, edition, freeze, photos, dir)
}

pub(crate) fn make_with(
    letters: &Letters,
    job: &Job,
    edition: Edition,
    freeze: &Freeze,
    photos: &dyn Photos,
    dir: &Path,
) -> Result<Made, NotMade> {
    let gathered = gather(letters, job, edition, freeze, photos);
    let slug = bag::slug(&job.book.address);
    let files = gathered.files.iter().map(|file| file.row.clone()).collect();
    let bag = Bag::new(&slug, job.id, gathered.files);
    let twelve: String = bag.id.chars().take(12).collect();
    let file_name = format!("{slug}-v{}-{edition}-{twelve}.zip", freeze.version);
    let bytes = write_whole(&bag, photos, dir, &file_name)?;
    Ok(Made {
        path: dir.join(&file_name),
        id: bag.id,
        file_name,
        bytes,
        lacks: gathered.lacks,
        not_known: gathered.not_known,
        totals: gathered.totals,
        files,
    })
}

/// Everything of a packet but its bag.
pub(crate) struct PacketContents {
    pub files: Vec<PacketFile>,
    pub lacks: Vec<Lack>,
    pub not_known: Vec<String>,
    pub totals: Totals,
}

pub(crate) fn gather(
    letters: &Letters,
    job: &Job,
    edition: Edition,
    freeze: &Freeze,
    photos: &dyn Photos,
) -> PacketContents {
    let parts = Parts::new(&job.standing(), job.solved);
    let unknown = not_known(job, &parts);
    let house = house_entries(job.entries);
    let set = digest(house);
    let mut making = Making {
        edition,
        files: Vec::new(),
        lacks: Vec::new(),
        pictures: Pictures::new(),
    };
    let rows = making.photos(job, &parts, photos);
    let svg = plan::drawn(&parts, &job.standing(), Lang::En, Sheet::PAPER);
    for (name, drawn) in [
        (PLAN, svg.clone()),
        (
            PLAN_ES,
            plan::drawn(&parts, &job.standing(), Lang::Es, Sheet::PAPER),
        ),
        (
            PLAN_HALF,
            plan::drawn(&parts, &job.standing(), Lang::En, Sheet::PHONE),
        ),
    ] {
        making.picture(name, drawn);
    }
    if let Some(solid) = plan::solid(&parts, job) {
        making.picture(SOLID, solid);
    }
    let told = PaperInput {
        job,
        parts: &parts,
        edition,
        freeze,
        photos: &rows,
        not_known: &unknown,
        digest: &set.hex(),
    };
    making.papers(letters, &told);
    making.put(
        "plan/plan.svg",
        Role::PlanSvg,
        "Plan, as a picture",
        Some(svg.into_bytes()),
    );
    let dxf = plan::dxf(&parts).into_bytes();
    making.put(
        "plan/plan.dxf",
        Role::PlanDxf,
        "Plan, for a drawing program, in feet",
        Some(dxf),
    );
    let glb = exports::glb(&parts);
    making.put(
        "plan/roof.glb",
        Role::RoofGlb,
        "Roof in space, in metres",
        glb,
    );
    making.tables(job, &parts, &rows);
    making.book(job);
    making.finish(job, freeze, &unknown, set.count)
}

/// A packet being made.
struct Making {
    edition: Edition,
    files: Vec<PacketFile>,
    lacks: Vec<Lack>,
    pictures: Pictures,
}

impl Making {
    /// Keeps a drawing for the papers.
    fn picture(&mut self, name: &str, drawn: String) {
        let drawn = typst::foundations::Bytes::from_string(drawn);
        self.pictures.insert(name.to_owned(), drawn);
    }

    /// Adds a file, where its reader is to have it and there is anything in it.
    fn put(&mut self, path: &str, role: Role, title: &str, bytes: Option<Vec<u8>>) {
        if let Some(bytes) = bytes.filter(|_| holds(self.edition, role)) {
            self.files.push(PacketFile::made(path, role, title, bytes));
        }
    }

    /// Sheet copies of the photos, and in the firm's packet the photos as they were taken.
    fn photos(&mut self, job: &Job, parts: &Parts, photos: &dyn Photos) -> Vec<PhotoRow> {
        let mut rows = said::photo_rows(job, parts);
        for (place, row) in rows.iter_mut().enumerate() {
            let name = format!("photo {}", row.number);
            let whole = photos.bytes(&row.sha256).ok();
            let whole = whole.filter(|bytes| sha256_hex(bytes) == row.sha256);
            let Some(bytes) = whole else {
                self.lacks.push(Lack::new(
                    name,
                    "It is not on this device as it was taken.",
                    "Bring it over from the device that took it.",
                ));
                continue;
            };
            if holds(self.edition, Role::Original) {
                self.original(row, &bytes);
            }
            match sheet::sheet(&bytes) {
                Ok(copy) => {
                    if copy.whole == Whole::CutShort {
                        self.lacks.push(Lack::new(
                            name,
                            "Its file is cut short: what came of it is shown.",
                            "Send it again whole.",
                        ));
                    }
                    self.copy(row, place, copy.jpeg);
                }
                Err(why) => {
                    let remedy = match why {
                        PhotoCopyError::Empty => "Take it again.",
                        PhotoCopyError::TooLarge => "Send a smaller one beside it.",
                        PhotoCopyError::Heic
                        | PhotoCopyError::OtherKind
                        | PhotoCopyError::Broken => "Send it again as JPEG.",
                    };
                    self.lacks.push(Lack::new(name, why.to_string(), remedy));
                }
            }
        }
        rows
    }

    fn original(&mut self, row: &PhotoRow, bytes: &[u8]) {
        let path = format!(
            "data/book/originals/{}.{}",
            row.sha256,
            sheet::extension(bytes)
        );
        // One photo kept twice is one file.
        if self.files.iter().any(|file| file.row.path == path) {
            return;
        }
        self.files.push(PacketFile {
            row: FileRow {
                media_type: media_type(&path).to_owned(),
                path,
                role: Role::Original,
                lang: None,
                title: format!("Photo {} as it was taken", row.number),
                money: false,
            },
            bytes: Bytes::Original {
                sha256: row.sha256.clone(),
                size: bytes.len() as u64,
            },
        });
    }

    fn copy(&mut self, row: &mut PhotoRow, place: usize, jpeg: Vec<u8>) {
        let side = row.side.map_or("unplaced", |side| side.word());
        let eight: String = row.sha256.chars().take(8).collect();
        let path = format!("photos/{side}-{:02}-{eight}.jpg", place + 1);
        let picture = typst::foundations::Bytes::new(jpeg.clone());
        self.pictures
            .insert(format!("photo-{}.jpg", row.number), picture);
        if holds(self.edition, Role::Photo) {
            self.files
                .push(PacketFile::made(&path, Role::Photo, &row.caption, jpeg));
            row.file = Some(path);
        }
    }

    fn papers(&mut self, letters: &Letters, told: &PaperInput) {
        let called_for = |paper: &PaperRow| papers::is_called_for(paper.kind, told.job);
        for (paper, lang) in papers_of(self.edition).filter(|(paper, _)| called_for(paper)) {
            let leaf = papers::leaf(paper.kind, lang, told);
            let title = papers::title(paper.kind, lang);
            let ident = format!(
                "{} {} {} {} {}",
                told.job.id,
                told.edition,
                told.freeze.version,
                paper.kind.name(),
                lang.code()
            );
            let set = typeset::set(&leaf, letters, &self.pictures, &told.freeze.moment, &ident);
            match set {
                Ok(set) => {
                    let path = format!("papers/{}.{}.pdf", paper.kind.name(), lang.code());
                    let file =
                        PacketFile::made(&path, paper.kind.role(), title, set.pdf).in_lang(lang);
                    let has_money =
                        paper.money == MoneyOn::Total && papers::shows_money(paper.kind, told.job);
                    self.files
                        .push(if has_money { file.with_money() } else { file });
                    if let Some(unwritten) = set.unwritten {
                        self.lacks.push(no_sign(paper.kind, title, &unwritten));
                    }
                }
                Err(why) => self.lacks.push(not_set(paper.kind, title, &why)),
            }
        }
    }

    fn tables(&mut self, job: &Job, parts: &Parts, photos: &[PhotoRow]) {
        let faces = (!parts.faces.is_empty()).then(|| exports::faces(job, parts));
        self.put("tables/faces.csv", Role::Faces, "Faces", faces);
        self.put(
            "tables/edges.csv",
            Role::Edges,
            "Edges",
            Some(exports::edges(parts)),
        );
        self.put(
            "tables/readings.csv",
            Role::Readings,
            "Readings",
            Some(exports::readings(job)),
        );
        self.put(
            "tables/items.csv",
            Role::Items,
            "What stands out of the roof",
            Some(exports::items(job, parts)),
        );
        let order = job.takeoff.map(exports::order_lines);
        self.put("tables/order.csv", Role::OrderLines, "Order lines", order);
        let price = job.price.map(exports::price_lines);
        self.put(
            "tables/price.csv",
            Role::PriceLines,
            "Price lines, with costs",
            price,
        );
        if let Some(file) = self
            .files
            .iter_mut()
            .find(|file| file.row.role == Role::PriceLines)
        {
            file.row.money = true;
        }
        self.put(
            "tables/differences.csv",
            Role::Differences,
            "What the version before said otherwise",
            exports::differences(&differences(job)),
        );
        let list = exports::photo_list(photos);
        self.put(
            "tables/photos.csv",
            Role::PhotoList,
            "List of photos",
            Some(list),
        );
    }

    fn book(&mut self, job: &Job) {
        self.put(
            "book/entries.jsonl",
            Role::Book,
            "The field book, entry by entry",
            Some(exports::entries(job)),
        );
        self.put(
            "book/survey.json",
            Role::Survey,
            "The survey, for eavebook solve",
            exports::survey(job),
        );
    }

    /// The two files that speak of all the others.
    fn finish(
        mut self,
        job: &Job,
        freeze: &Freeze,
        unknown: &[NotKnown],
        count: u64,
    ) -> PacketContents {
        let not_known: Vec<String> = unknown
            .iter()
            .map(|one| crate::words::capital(&one.say(Lang::En)))
            .collect();
        let totals = totals(job);
        self.files.sort_by(|a, b| a.row.path.cmp(&b.row.path));
        let rows: Vec<FileRow> = self.files.iter().map(|file| file.row.clone()).collect();
        let start = Start {
            edition: self.edition,
            freeze,
            files: &rows,
            lacks: &self.lacks,
            not_known: &not_known,
        };
        let page = start_here(job, &start).into_bytes();
        let mut start = PacketFile::made("START-HERE.html", Role::Start, "Start here", page);
        start.row.lang = Some(Lang::En.code().to_owned());
        let mut list = PacketFile::made(
            "packet.json",
            Role::List,
            "The list of this packet",
            Vec::new(),
        );
        let mut all: Vec<&FileRow> = rows.iter().chain([&start.row, &list.row]).collect();
        all.sort_by(|a, b| a.path.cmp(&b.path));
        let whole = PacketList {
            files: all,
            lacks: &self.lacks,
            not_known: &not_known,
            private_left_out: said::private_photos(job),
            totals: &totals,
            ..PacketList::new(
                job.id,
                self.edition,
                freeze,
                EntryCount {
                    count,
                    digest: digest(house_entries(job.entries)).hex(),
                },
            )
        };
        let mut text = serde_json::to_vec_pretty(&whole).unwrap_or_default();
        text.push(b'\n');
        list.bytes = Bytes::Made(text);
        self.files.extend([start, list]);
        PacketContents {
            files: self.files,
            lacks: self.lacks,
            not_known,
            totals,
        }
    }
}

fn no_sign(kind: PaperKind, title: &str, unwritten: &typeset::Unwritten) -> Lack {
    let signs: String = unwritten.signs.iter().collect();
    Lack::new(
        kind.name(),
        format!(
            "The {} has [?] where no font of the program has the sign: {signs}.",
            title.to_lowercase()
        ),
        "The tables hold it as it was typed; write it in letters of the Latin alphabet to see it on the paper.",
    )
}

fn not_set(kind: PaperKind, title: &str, why: &NotSet) -> Lack {
    let title = title.to_lowercase();
    match why {
        NotSet::NoFont => Lack::new(
            kind.name(),
            format!("The {title} could not be set: its font is missing."),
            "Put the app in again.",
        ),
        NotSet::Refused(said) => Lack::new(
            kind.name(),
            format!("The {title} could not be set: {said}."),
            "Make the packet again; if it stays so, send the firm's packet to who looks after the program.",
        ),
    }
}

/// Areas in square feet, lengths in feet, to a thousandth; only what is known.
fn totals(job: &Job) -> Totals {
    let mut totals = Totals::new();
    let Some(solved) = job.solved else {
        return totals;
    };
    let mut put = |name: &'static str, value: Option<f64>| {
        if let Some(value) = value.filter(|value| value.is_finite()) {
            totals.insert(name, (value * 1000.0).round() / 1000.0 + 0.0);
        }
    };
    let known = &solved.totals;
    put(
        "plan_area",
        known.plan_area.map(|area| area.in_square_feet()),
    );
    put("area", known.area.map(|area| area.value.in_square_feet()));
    put(
        "area_sigma",
        known.area.map(|area| area.sigma.in_square_feet()),
    );
    put("squares", known.area.map(|area| area.value.in_squares()));
    for (kind, length) in &known.edges {
        put(kind.key(), Some(length.in_feet()));
    }
    totals
}

//! What holds of every packet, whatever the house.

use crate::check::{VerifyError, check, check_reader};
use crate::contents::{Bytes, PacketFile, Role};
use crate::demo_house::{Kept, Owned, demo, entry, freeze, photo};
use crate::differences::{Difference, differences};
use crate::edition::{Edition, Lang, MoneyOn, PAPERS, PaperKind, papers_of};
use crate::job::{Freeze, Job};
use crate::leaf::Leaf;
use crate::make::{Made, gather, make, make_with};
use crate::named::Parts;
use crate::not_known::not_known;
use crate::papers::{self, PaperInput};
use crate::said;
use crate::typeset::Letters;
use eavebook_core::book::kinds::{
    ChangeFound, Followed, HowRead, JobStarted, Kind, Reading, SettledAtDesk, Strike, TapeMarks,
    Thing,
};
use serde_json::Value;
use std::collections::BTreeSet;
use std::io::Cursor;
use std::path::Path;

/// A paper of a house before it is set.
fn leaf(owned: &Owned, kind: PaperKind, lang: Lang) -> Leaf {
    let job = owned.job();
    let parts = Parts::new(&job.standing(), job.solved);
    let mut photos = said::photo_rows(&job, &parts);
    for photo in &mut photos {
        photo.file = Some(format!("photos/{}.jpg", photo.number));
    }
    let told = PaperInput {
        job: &job,
        parts: &parts,
        edition: Edition::Firm,
        freeze: &freeze(),
        photos: &photos,
        not_known: &not_known(&job, &parts),
        digest: "0123456789abcdef",
    };
    papers::leaf(kind, lang, &told)
}

fn file<'a>(files: &'a [PacketFile], path: &str) -> &'a [u8] {
    let found = files.iter().find(|file| file.row.path == path);
    match &found
        .unwrap_or_else(|| unreachable!("{path} is not there"))
        .bytes
    {
        Bytes::Made(bytes) => bytes,
        Bytes::Original { .. } => unreachable!("{path} was not made here"),
    }
}

/// A job with nothing but its address.
fn bare() -> Owned {
    let started = JobStarted {
        address: "1 Invented Lane".to_owned(),
        pretend: true,
    };
    let entries = vec![entry(1, &Kind::JobStarted(started), Vec::new())];
    Owned::new(entries, Kept::default())
}

/// The pretend house with its old roof off: two changes agreed, one open and unpriced, one struck.
fn changed() -> Owned {
    let house = demo();
    let mut photos = house.photos.clone();
    let mut entries = house.entries;
    let mut next = u32::try_from(entries.len()).unwrap();
    let mut book = |kind: &Kind, supersedes| {
        next += 1;
        entries.push(entry(next, kind, supersedes));
        entries[entries.len() - 1].id
    };
    let found = |number, leg, sheets, each: Option<&str>, by: Option<&str>| {
        Kind::Change(ChangeFound {
            number,
            leg,
            sheets,
            each: each.map(str::to_owned),
            consent: by.is_some(),
            by: by.map(str::to_owned),
        })
    };
    let seen = include_bytes!("../../../assets/demo/tape-leg-2.jpg");
    let of = serde_json::json!({"thing": "change", "number": 1});
    book(&photo(&mut photos, seen, of), Vec::new());
    book(
        &found(1, 1, 3, Some("58.00"), Some("the owner")),
        Vec::new(),
    );
    book(
        &found(2, 2, 1, Some("58.00"), Some("the owner")),
        Vec::new(),
    );
    book(&found(3, 3, 2, None, None), Vec::new());
    let slip = book(&found(4, 3, 20, Some("58.00"), None), Vec::new());
    let reason = Some("counted the wrong face".to_owned());
    book(&Kind::Strike(Strike { reason }), vec![slip]);
    Owned::new(entries, photos)
}

#[test]
fn the_changes_are_in_the_owners_packet_and_the_firms_once_there_are_any() {
    let paper = |owned: &Owned, edition| {
        let gathered = gather(
            &Letters::shipped(),
            &owned.job(),
            edition,
            &freeze(),
            &owned.photos,
        );
        assert_eq!(gathered.lacks, [], "{edition}");
        let rows = gathered.files.into_iter().map(|file| file.row);
        rows.filter(|row| row.role == Role::Changes)
            .map(|row| row.money)
            .collect::<Vec<_>>()
    };
    for edition in Edition::ALL {
        let given = matches!(edition, Edition::Owner | Edition::Firm);
        let wanted = if given { vec![true] } else { Vec::new() };
        assert_eq!(paper(&changed(), edition), wanted, "{edition}");
        assert!(paper(&demo(), edition).is_empty(), "{edition}");
    }
}

#[test]
fn a_new_version_says_what_the_one_before_said_otherwise_and_which_entry_made_it_so() {
    let then = demo();
    let first = then.job();
    let mut entries = then.entries.clone();
    let mut read_again = |thing: Thing, text: &str| {
        let reading = Reading {
            thing,
            text: text.to_owned(),
            tape: TapeMarks::FeetInches,
            how: HowRead::Taped,
            followed: Followed::EaveEdge,
            blind: true,
        };
        let next = u32::try_from(entries.len() + 1).unwrap();
        entries.push(entry(next, &Kind::Reading(reading), Vec::new()));
        entries[entries.len() - 1].id
    };
    let height = read_again(Thing::EaveHeight, "10'");
    let leg = read_again(Thing::Leg { leg: 2 }, "14' 3 1/2\"");
    let now = Owned::new(entries, then.photos.clone());
    let second = Job {
        before: Some(&first),
        ..now.job()
    };
    let rows = differences(&second);
    let of = |thing: &str| rows.iter().find(|row| row.thing == thing).unwrap();
    assert_eq!(
        of("eave height"),
        &Difference {
            thing: "eave height".to_owned(),
            before: "9 ft, read once".to_owned(),
            now: "9 ft, suspect; 10 ft, suspect".to_owned(),
            why: vec![height],
        }
    );
    assert_eq!(of("leg 2").why, [leg]);
    // A figure that is worked out rests on every entry that changed a length.
    let area = of("roof area");
    assert!(area.before != area.now, "{area:?}");
    assert_eq!(
        BTreeSet::from_iter(area.why.clone()),
        BTreeSet::from([height, leg])
    );
    assert!(rows.iter().all(|row| row.before != row.now), "{rows:?}");
    let freeze = Freeze {
        version: 2,
        ..freeze()
    };
    for edition in Edition::ALL {
        let gathered = gather(&Letters::shipped(), &second, edition, &freeze, &now.photos);
        assert_eq!(gathered.lacks, [], "{edition}");
        let mut roles = gathered.files.iter().map(|file| file.row.role);
        assert_eq!(
            roles.any(|role| role == Role::Differences),
            edition != Edition::Supplier,
            "{edition}"
        );
    }
}

#[test]
fn where_nothing_was_booked_since_nothing_differs() {
    let house = demo();
    let first = house.job();
    let again = Job {
        before: Some(&first),
        ..house.job()
    };
    assert_eq!(differences(&again), []);
    assert_eq!(
        differences(&first),
        [],
        "a first version has none before it"
    );
}

#[test]
fn what_was_settled_at_the_desk_is_called_so_in_the_record_and_the_table() {
    let house = demo();
    let once = |text: &str| text.matches("read once").count();
    let record = leaf(&house, PaperKind::Story, Lang::En).text();
    assert!(once(&record) > 0, "{record}");
    let read = house.book.readings.iter().map(|read| read.entry);
    let all = read.chain(house.book.pitches.iter().map(|read| read.entry));
    let settled = Kind::SettledAtDesk(SettledAtDesk {
        entries: all.collect(),
    });
    let mut entries = house.entries;
    let next = u32::try_from(entries.len() + 1).unwrap();
    entries.push(entry(next, &settled, Vec::new()));
    let settled = Owned::new(entries, house.photos);
    let record = leaf(&settled, PaperKind::Story, Lang::En).text();
    assert_eq!(once(&record), 0, "{record}");
    assert!(record.contains("settled at desk"), "{record}");
    let table = String::from_utf8(crate::exports::readings(&settled.job())).unwrap();
    assert!(table.contains(",settled at desk,"), "{table}");
    assert!(!table.contains(",read once,"), "{table}");
}

fn made_in(dir: &Path, owned: &Owned, edition: Edition) -> Made {
    make(&owned.job(), edition, &freeze(), &owned.photos, dir).unwrap()
}

#[test]
fn every_paper_says_what_it_said() {
    for row in PAPERS {
        let house = if row.kind == PaperKind::Changes {
            changed()
        } else {
            demo()
        };
        for lang in row.langs {
            let name = format!("{}.{}", row.kind.name(), lang.code());
            insta::assert_snapshot!(name, leaf(&house, row.kind, *lang).text());
        }
    }
}

#[test]
fn neither_crew_nor_order_paper_holds_money_or_a_word_of_it() {
    for house in [demo(), bare()] {
        for row in PAPERS.iter().filter(|row| row.money == MoneyOn::No) {
            for lang in row.langs {
                let text = leaf(&house, row.kind, *lang).text().to_lowercase();
                for word in [
                    "$", "price", "margin", "cost", "profit", "precio", "margen", "costo",
                ] {
                    // A permit sheet may speak of what is asked; ours does not.
                    assert!(
                        !text.contains(word),
                        "{} holds {word}:\n{text}",
                        row.kind.name()
                    );
                }
            }
        }
    }
}

#[test]
fn the_owner_never_reads_what_the_job_costs_the_firm() {
    let text = leaf(&demo(), PaperKind::Proposal, Lang::En)
        .text()
        .to_lowercase();
    for word in ["margin", "cost", "profit", "markup", "unit price"] {
        assert!(!text.contains(word), "{word}:\n{text}");
    }
}

#[test]
fn no_paper_promises_what_nobody_can() {
    for row in PAPERS {
        for lang in row.langs {
            let text = leaf(&demo(), row.kind, *lang).text().to_lowercase();
            for word in ["safe", "guarant", "compliant", "seguro que", "garant"] {
                assert!(!text.contains(word), "{} holds {word}", row.kind.name());
            }
        }
    }
}

#[test]
fn a_packet_of_every_edition_proves_itself_and_is_the_same_bytes_twice() {
    let house = demo();
    for edition in Edition::ALL {
        let [once, again] = [(); 2].map(|()| tempfile::tempdir().unwrap());
        let made = made_in(once.path(), &house, edition);
        let same = made_in(again.path(), &house, edition);
        assert_eq!(made.lacks, [], "{edition}");
        let bytes = std::fs::read(&made.path).unwrap();
        assert_eq!(bytes, std::fs::read(&same.path).unwrap(), "{edition}");
        let proved = check(&made.path).unwrap();
        assert_eq!(
            (&proved.id, proved.edition.as_str()),
            (&made.id, edition.name())
        );
        assert!(
            made.file_name
                .ends_with(&format!("-v1-{edition}-{}.zip", &made.id[..12]))
        );
        let papers = proved
            .files
            .iter()
            .filter(|row| row.path.ends_with(".pdf"))
            .count();
        let job = house.job();
        let called_for = |kind| papers::is_called_for(kind, &job);
        let wanted = papers_of(edition).filter(|(row, _)| called_for(row.kind));
        assert_eq!(papers, wanted.count(), "{edition}");
        println!(
            "{edition}: {} files, {} bytes",
            proved.files.len(),
            bytes.len()
        );
    }
}

#[test]
fn the_list_of_the_firms_packet_is_as_it_was() {
    let house = demo();
    let gathered = gather(
        &Letters::shipped(),
        &house.job(),
        Edition::Firm,
        &freeze(),
        &house.photos,
    );
    let text = String::from_utf8(file(&gathered.files, "data/packet.json").to_vec()).unwrap();
    insta::assert_snapshot!("packet.json", text);
    let listed: Value = serde_json::from_str(&text).unwrap();
    assert_eq!(
        listed["files"].as_array().unwrap().len(),
        gathered.files.len()
    );
}

#[test]
fn what_is_not_known_and_what_lacks_stands_word_for_word_where_one_starts() {
    let mut house = demo();
    let broken = photo(&mut house.photos, b"\xff\xd8\xff\xe0 noise", Value::Null);
    house.entries.push(entry(900, &broken, Vec::new()));
    let house = Owned::new(house.entries, house.photos);
    let gathered = gather(
        &Letters::shipped(),
        &house.job(),
        Edition::Owner,
        &freeze(),
        &house.photos,
    );
    let page = String::from_utf8(file(&gathered.files, "data/START-HERE.html").to_vec()).unwrap();
    assert!(!gathered.not_known.is_empty() && gathered.lacks.len() == 1);
    for said in &gathered.not_known {
        assert!(page.contains(&crate::plan::escaped(said)), "{said}");
    }
    let lack = &gathered.lacks[0];
    assert_eq!(
        (lack.what.as_str(), lack.why.as_str(), lack.remedy.as_str()),
        (
            "photo 3",
            "It is kept but cannot be shown.",
            "Send it again as JPEG."
        )
    );
    assert!(page.contains("photo 3") && page.contains(&lack.why) && page.contains(&lack.remedy));
    for banned in ["<script", "http:", "https:", "src="] {
        assert!(!page.contains(banned), "{banned}");
    }
}

#[test]
fn without_a_font_each_paper_is_named_and_the_rest_is_made() {
    let house = demo();
    let dir = tempfile::tempdir().unwrap();
    let none = Letters::from_fonts(&[]);
    let made = make_with(
        &none,
        &house.job(),
        Edition::Crew,
        &freeze(),
        &house.photos,
        dir.path(),
    )
    .unwrap();
    let said: Vec<String> = made
        .lacks
        .iter()
        .map(|lack| format!("{}: {} {}", lack.what, lack.why, lack.remedy))
        .collect();
    assert_eq!(
        said,
        [
            "crew: The crew sheet could not be set: its font is missing. Put the app in again.",
            "crew: The hoja de la cuadrilla could not be set: its font is missing. Put the app in again.",
        ]
    );
    let proved = check(&made.path).unwrap();
    assert!(proved.files.iter().any(|row| row.role == Role::PlanSvg));
}

#[test]
fn a_sign_that_no_font_has_costs_itself_and_no_paper() {
    let started = JobStarted {
        address: "屋 Invented Lane".to_owned(),
        pretend: false,
    };
    let house = Owned::new(
        vec![entry(1, &Kind::JobStarted(started), Vec::new())],
        Kept::default(),
    );
    let dir = tempfile::tempdir().unwrap();
    let made = made_in(dir.path(), &house, Edition::Crew);
    let papers = made
        .files
        .iter()
        .filter(|row| row.role == Role::Crew)
        .count();
    assert_eq!((papers, made.lacks.len()), (2, 2));
    assert_eq!(
        made.lacks[0].why,
        "The crew sheet has [?] where no font of the program has the sign: 屋."
    );
    assert!(
        made.file_name.starts_with("invented-lane-v1-crew-"),
        "{}",
        made.file_name
    );
}

#[test]
fn a_job_with_nothing_but_an_address_makes_every_edition() {
    let house = bare();
    for edition in Edition::ALL {
        let dir = tempfile::tempdir().unwrap();
        let made = made_in(dir.path(), &house, edition);
        assert_eq!(made.lacks, [], "{edition}");
        assert!(
            made.not_known
                .iter()
                .any(|said| said.contains("comes round")),
            "{edition}"
        );
        check(&made.path).unwrap();
    }
}

#[test]
fn the_survey_in_the_firms_packet_solves_to_the_same_area() {
    let house = demo();
    let gathered = gather(
        &Letters::shipped(),
        &house.job(),
        Edition::Firm,
        &freeze(),
        &house.photos,
    );
    let survey =
        eavebook_core::survey_file::read(file(&gathered.files, "data/book/survey.json")).unwrap();
    let solved = eavebook_core::solve::solve(&survey.survey).unwrap();
    let (again, first) = (
        solved.totals.area.unwrap(),
        house.solved.as_ref().unwrap().totals.area.unwrap(),
    );
    let apart = |a: f64, b: f64| (a - b).abs() / b;
    assert!(apart(again.value.in_square_feet(), first.value.in_square_feet()) < 1e-9);
    assert!(apart(again.sigma.in_square_feet(), first.sigma.in_square_feet()) < 1e-9);
}

#[test]
fn the_entries_in_the_firms_packet_are_those_that_were_booked() {
    let house = demo();
    let gathered = gather(
        &Letters::shipped(),
        &house.job(),
        Edition::Firm,
        &freeze(),
        &house.photos,
    );
    let text =
        String::from_utf8(file(&gathered.files, "data/book/entries.jsonl").to_vec()).unwrap();
    let read: Vec<_> = text
        .lines()
        .map(|line| eavebook_core::book::entry::Entry::from_json(line).unwrap())
        .collect();
    assert_eq!(read, house.entries);
}

#[test]
fn a_full_folder_or_none_leaves_nothing_under_a_name() {
    let house = demo();
    let dir = tempfile::tempdir().unwrap();
    let not_a_folder = dir.path().join("file");
    std::fs::write(&not_a_folder, b"x").unwrap();
    let why = make(
        &house.job(),
        Edition::Crew,
        &freeze(),
        &house.photos,
        &not_a_folder,
    )
    .unwrap_err();
    let said = why.to_string();
    assert!(
        said.starts_with("The packet could not be written in "),
        "{said}"
    );
    assert!(
        said.ends_with("Nothing was sent; the book is as it was. Choose another folder."),
        "{said}"
    );
    assert_eq!(std::fs::read_dir(dir.path()).unwrap().count(), 1);
}

/// Every byte of the names, lists and papers matters: turning any one is seen.
#[test]
fn a_packet_with_one_byte_turned_is_refused() {
    let house = demo();
    let dir = tempfile::tempdir().unwrap();
    let made = made_in(dir.path(), &house, Edition::Crew);
    let whole = std::fs::read(&made.path).unwrap();
    check_reader(Cursor::new(&whole)).unwrap();
    let mut passed = Vec::new();
    for at in (0..whole.len()).step_by(whole.len() / 300) {
        let mut turned = whole.clone();
        turned[at] ^= 0x20;
        if let Ok(proved) = check_reader(Cursor::new(&turned)) {
            // A byte of the zip's frame that no reader uses: the packet is the same all the same.
            passed.push(proved.id);
        }
    }
    println!(
        "{} of 300 turned bytes lie in the frame of the zip",
        passed.len()
    );
    assert!(
        passed.iter().all(|id| *id == made.id) && passed.len() < 15,
        "{}",
        passed.len()
    );
    let cut = check_reader(Cursor::new(&whole[..whole.len() - 30]))
        .unwrap_err()
        .to_string();
    assert!(
        cut.starts_with("this is no packet, or one cut short ("),
        "{cut}"
    );
}

/// A zip of these files, in this order.
fn zip_of(files: &[(&str, &[u8])]) -> Vec<u8> {
    use std::io::Write;
    let mut zip = zip::ZipWriter::new(Cursor::new(Vec::new()));
    for (name, bytes) in files {
        zip.start_file(*name, zip::write::SimpleFileOptions::default())
            .unwrap();
        zip.write_all(bytes).unwrap();
    }
    zip.finish().unwrap().into_inner()
}

#[test]
fn a_packet_that_leads_out_of_its_folder_is_refused_by_the_path() {
    for path in [
        "a/../../x",
        "../x",
        "/x",
        "a//x",
        "a/./x",
        "a/b\\..\\x",
        "C:/x",
        "x",
    ] {
        let refused = check_reader(Cursor::new(zip_of(&[(path, b"")]))).unwrap_err();
        assert!(
            matches!(refused, VerifyError::Path(_) | VerifyError::NoZip(_)),
            "{path}: {refused}"
        );
    }
    let two = zip_of(&[("a/bagit.txt", b""), ("b/bagit.txt", b"")]);
    assert!(matches!(
        check_reader(Cursor::new(two)).unwrap_err(),
        VerifyError::Path(_)
    ));
}

#[test]
fn a_link_in_a_packet_is_refused() {
    let mut zip = zip::ZipWriter::new(Cursor::new(Vec::new()));
    zip.add_symlink(
        "a/data/x",
        "/etc/hosts",
        zip::write::SimpleFileOptions::default(),
    )
    .unwrap();
    let bytes = zip.finish().unwrap().into_inner();
    let said = check_reader(Cursor::new(bytes)).unwrap_err().to_string();
    assert_eq!(
        said,
        "the packet holds a link, \"a/data/x\": do not open it"
    );
}

#[test]
fn a_packet_without_its_lists_is_refused_by_what_lacks() {
    let said = check_reader(Cursor::new(zip_of(&[("a/data/x", b"1")])))
        .unwrap_err()
        .to_string();
    assert_eq!(said, "the packet lacks bagit.txt: get it again whole");
}

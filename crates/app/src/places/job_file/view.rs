//! Packets as a person looks at them: the newest first, what lies in each, what each lacks.

use crate::answer::Answer;
use crate::names;
use crate::open_job::entries;
use crate::places::job_file::packet_files;
use crate::places::job_file::reply::{
    PacketView, PacketsView, PaperGroup, PaperView, ReaderView, SendView,
};
use crate::refusal::Refusal;
use crate::reply::Reply;
use crate::sentence::{Sentence, sentence};
use eavebook_core::book::edition::Edition;
use eavebook_core::book::fold::fold;
use eavebook_core::book::fold::{FieldBook, Noted};
use eavebook_core::book::kinds::{PacketFrozen, PacketSent, SendStage};
use eavebook_packet::{FileRow, Lack, PacketSummary, Role};
use eavebook_store::Packets;
use eavebook_store::Store;
use std::path::Path;
use uuid::Uuid;

/// Answers with the packets of a job. `made`: the id of the one just made.
///
/// # Errors
/// `NoJob`.
pub fn packets(store: &Store, job: Uuid, made: Option<String>) -> Result<Answer, Refusal> {
    let folded = fold(&entries(store, job)?);
    let view = view(job, &folded, &store.packets(), made);
    Ok(Reply::Packets(Box::new(view)).into())
}

/// The packets of a job. `made`: the one just made.
#[must_use]
pub fn view(job: Uuid, book: &FieldBook, packets: &Packets, made: Option<String>) -> PacketsView {
    let frozen = &book.frozen;
    let sends = sends(book);
    PacketsView {
        job,
        readers: Edition::ALL.into_iter().map(reader).collect(),
        packets: frozen
            .iter()
            .rev()
            .map(|(_, freeze)| packet(freeze, packets))
            .collect(),
        made,
        sending: sending(&sends),
        sends,
    }
}

/// Every sending that was begun, the newest first, with what was last said of it.
fn sends(book: &FieldBook) -> Vec<SendView> {
    let begun = book.sent.iter().rev().filter(|sent| sent.what.of.is_none());
    let view = |begun: &Noted<PacketSent>| {
        let of_it = |sent: &&Noted<PacketSent>| {
            sent.entry == begun.entry || sent.what.of == Some(begun.entry)
        };
        let last = book.sent.iter().rfind(of_it).unwrap_or(begun);
        let when = names::day_and_time(&last.local_time);
        let (code, words) = match last.what.stage {
            SendStage::Waiting => ("send_waits", format!("Waiting to send since {when}.")),
            SendStage::Shared => (
                "send_shared",
                format!(
                    "Given to this device's own way of sharing {when}. Whether it came is not known."
                ),
            ),
            SendStage::HandedOn => ("send_handed_on", format!("Handed on {when}.")),
            SendStage::NotSent => ("send_dropped", format!("Not sent: taken back {when}.")),
        };
        let freeze = book
            .frozen
            .iter()
            .find(|(_, freeze)| freeze.packet == begun.what.packet);
        SendView {
            send: begun.entry,
            packet: begun.what.packet.clone(),
            title: freeze.map_or_else(String::new, |(_, freeze)| title(freeze)),
            to: begun.what.to.clone(),
            stage: last.what.stage,
            words: sentence(code, words),
        }
    };
    begun.map(view).collect()
}

/// What waits, and what went.
fn sending(sends: &[SendView]) -> Sentence {
    let count = |stages: &[SendStage]| {
        let of_them = sends.iter().filter(|send| stages.contains(&send.stage));
        of_them.count()
    };
    let waiting = count(&[SendStage::Waiting]);
    let gone = count(&[SendStage::Shared, SendStage::HandedOn]);
    match (waiting, gone) {
        (0, 0) => sentence("nothing_sent", "Nothing sent yet."),
        (0, gone) => sentence(
            "all_handed_on",
            format!("Nothing waits. Handed on: {gone}."),
        ),
        (waiting, _) => sentence("send_waiting", format!("Waiting to send: {waiting}")),
    }
}

/// "Owner, version 2".
fn title(freeze: &PacketFrozen) -> String {
    format!("{}, version {}", name(freeze.edition), freeze.version)
}

/// For whom, in a word.
#[must_use]
pub fn name(edition: Edition) -> &'static str {
    match edition {
        Edition::Owner => "Owner",
        Edition::Crew => "Crew",
        Edition::Firm => "Firm",
        Edition::Supplier => "Supplier",
        Edition::Permit => "Permit office",
    }
}

/// What a reader gets and what a reader never gets.
fn reader(edition: Edition) -> ReaderView {
    let (holds, never) = match edition {
        Edition::Owner => (
            "Proposal with its price, photo sheets, the story of every figure, plan and tables.",
            "Never cost, margin or the book.",
        ),
        Edition::Crew => (
            "Crew sheet in English and Spanish, photos, plan and order.",
            "Never money.",
        ),
        Edition::Firm => (
            "Everything: every paper, cost and margin, the book and the photos as taken.",
            "Never to be passed on.",
        ),
        Edition::Supplier => (
            "Order list in the units that are sold, and the plan.",
            "Never our money, photos or readings.",
        ),
        Edition::Permit => (
            "Permit sheet with scope, areas, layers and code notes, plan and tables.",
            "Never a price, photos or readings.",
        ),
    };
    ReaderView {
        edition,
        name: name(edition).to_owned(),
        holds: sentence(&format!("{edition}_holds"), holds),
        never: sentence(&format!("{edition}_never"), never),
    }
}

fn packet(freeze: &PacketFrozen, packets: &Packets) -> PacketView {
    let path = packet_files::there(packets, &freeze.packet);
    let look = path
        .as_deref()
        .and_then(|path| eavebook_packet::summarize(path).ok());
    let size = path
        .as_deref()
        .and_then(|path| std::fs::metadata(path).ok())
        .map(|about| megabytes(about.len()));
    PacketView {
        packet: freeze.packet.clone(),
        edition: freeze.edition,
        version: freeze.version,
        title: title(freeze),
        moment: names::day_and_time(&freeze.moment),
        size,
        open: look
            .as_ref()
            .map(|look| format!("{} open", look.not_known.len())),
        follows: freeze.before.as_ref().map(|_| {
            let before = freeze.version.saturating_sub(1);
            sentence(
                "packet_follows",
                format!("Follows version {before}. What changed stands in its table Differences."),
            )
        }),
        not_known: look
            .as_ref()
            .map(|look| look.not_known.clone())
            .unwrap_or_default(),
        lacks: look.iter().flat_map(|look| &look.lacks).map(lack).collect(),
        keep_in_house: (freeze.edition == Edition::Firm).then(|| {
            sentence(
                "firm_only",
                "For the firm alone: it holds cost, margin and the book. Do not pass it on.",
            )
        }),
        file: path
            .as_deref()
            .and_then(Path::file_name)
            .map(|name| name.to_string_lossy().into()),
        papers: look.as_ref().map(papers).unwrap_or_default(),
    }
}

/// "Photo 7: It is kept but cannot be shown. Send it again as JPEG."
fn lack(lack: &Lack) -> Sentence {
    let Lack { what, why, remedy } = lack;
    sentence(
        "packet_lacks",
        format!("{}: {why} {remedy}", names::capital(what)),
    )
}

/// A size of a file, rounded up, so that there is room where it says so.
fn megabytes(bytes: u64) -> String {
    match bytes.div_ceil(1_000_000) {
        0 | 1 => format!("{} kB", bytes.div_ceil(1000)),
        many => format!("{many} MB"),
    }
}

/// Whether a file of a packet belongs to a group.
type Belongs = fn(Role) -> bool;

/// In the order in which one looks: what to open first, papers, plan, tables, the rest.
const GROUPS: [(&str, Belongs); 6] = [
    ("Start here", |role| role == Role::Start),
    ("Papers", is_paper),
    ("Plan", |role| {
        matches!(role, Role::PlanSvg | Role::PlanDxf | Role::RoofGlb)
    }),
    ("Tables", is_table),
    ("Photos", |role| role == Role::Photo),
    ("Book", |role| {
        matches!(
            role,
            Role::Book | Role::Survey | Role::Original | Role::List
        )
    }),
];

fn is_paper(role: Role) -> bool {
    matches!(
        role,
        Role::Proposal
            | Role::Crew
            | Role::Order
            | Role::Permit
            | Role::Photos
            | Role::Story
            | Role::Changes
    )
}

fn is_table(role: Role) -> bool {
    matches!(
        role,
        Role::Faces
            | Role::Edges
            | Role::Readings
            | Role::Items
            | Role::OrderLines
            | Role::PriceLines
            | Role::PhotoList
    )
}

fn papers(look: &PacketSummary) -> Vec<PaperGroup> {
    let groups = GROUPS.into_iter().map(|(title, belongs)| PaperGroup {
        title: title.to_owned(),
        papers: look
            .files
            .iter()
            .filter(|row| belongs(row.role))
            .map(paper)
            .collect(),
    });
    groups.filter(|group| !group.papers.is_empty()).collect()
}

fn paper(row: &FileRow) -> PaperView {
    let language = match row.lang.as_deref() {
        Some("es") => ", in Spanish",
        Some(_) | None => "",
    };
    PaperView {
        path: row.path.clone(),
        title: format!("{}{language}", row.title),
        sort: sort(&row.path),
    }
}

/// The sort of a file by the end of its name: "PDF".
fn sort(path: &str) -> String {
    match path.rsplit_once('.').map(|(_, end)| end) {
        Some("html") => "page".to_owned(),
        Some("csv") => "table".to_owned(),
        Some("jpg" | "png" | "webp" | "heic") => "picture".to_owned(),
        Some(end) => end.to_uppercase(),
        None => "file".to_owned(),
    }
}

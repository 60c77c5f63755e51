//! A packet on its way: to whom, and how far it came. Nothing here reaches a network; what the
//! system does with a file is only what somebody, or its way of sharing, says of it.

use crate::answer::Answer;
use crate::open_job::entries;
use crate::places::job_file::view;
use crate::refusal::{Refusal, RequestRefusal};
use crate::stamp;
use eavebook_core::book::fold::fold;
use eavebook_core::book::kinds::{Kind, PacketSent, SendStage};
use eavebook_store::{DraftAfter, Store};
use uuid::Uuid;

/// Notes that a packet is to go to somebody. It waits until something is said of it.
///
/// # Errors
/// `NoJob`, `NoPacket`, `ToWhom`.
pub fn begin(
    book: &mut Store,
    job: Uuid,
    packet: Option<&str>,
    to: &str,
    after: u32,
) -> Result<Answer, Refusal> {
    let told = fold(&entries(book, job)?);
    let mut made = told.frozen.iter().rev().map(|(_, freeze)| &freeze.packet);
    let asked = made.find(|id| packet.is_none_or(|packet| packet == id.as_str()));
    let packet = asked.ok_or(RequestRefusal::NoPacket)?.clone();
    let to = to.trim();
    if to.is_empty() {
        return Err(RequestRefusal::ToWhom.into());
    }
    let begun = told.sent.iter().filter(|sent| sent.what.of.is_none());
    if begun.count() <= after as usize {
        let kind = Kind::PacketSent(PacketSent {
            of: None,
            packet,
            to: to.to_owned(),
            stage: SendStage::Waiting,
        });
        append(book, job, &kind)?;
    }
    view::packets(book, job, None)
}

/// Notes how far a sending came; said twice it is noted once.
///
/// # Errors
/// `NoJob`, `NoSending`.
pub fn came(book: &mut Store, job: Uuid, send: Uuid, stage: SendStage) -> Result<Answer, Refusal> {
    let told = fold(&entries(book, job)?);
    let begun = told.sent.iter().find(|sent| sent.entry == send);
    let begun = begun.ok_or(RequestRefusal::NoSending)?.what.clone();
    let mut said = told.sent.iter().rev();
    let last = said.find(|sent| sent.entry == send || sent.what.of == Some(send));
    if last.is_none_or(|last| last.what.stage != stage) {
        let of = Some(send);
        append(
            book,
            job,
            &Kind::PacketSent(PacketSent { of, stage, ..begun }),
        )?;
    }
    view::packets(book, job, None)
}

fn append(book: &mut Store, job: Uuid, kind: &Kind) -> Result<(), Refusal> {
    let entry = stamp::entry(book, job, kind, Vec::new())?;
    book.append(&[entry], DraftAfter::AsItIs)?;
    Ok(())
}

//! What is done with each request, by the place of the screen from which it comes.

pub mod change;
pub mod field_book;
pub mod hold;
pub mod job;
pub mod job_file;
pub mod on_roof;
pub mod pad;
pub mod photos;
pub mod plan;
pub mod send;
pub mod sight;
pub mod takeoff;
pub mod today;
pub mod visit;

use crate::refusal::Refusal;
use crate::reply::Reply;
use crate::request::Request;
use crate::view;
use eavebook_core::book::kinds::CoveringObserved;
use eavebook_store::Store;

/// What comes of a request.
pub enum Answer {
    /// Its reply.
    Now(Reply),
    /// A packet, to be made while others book.
    Make(Box<job_file::ToMake>),
    /// A hub is to be asked, which may take a while, and nobody waits for it who books.
    Join(String),
    /// The hub of this machine is to be asked.
    Invite,
}

/// Carries out one request, or reads what is needed to carry it out without the book.
///
/// # Errors
/// Says why nothing was changed.
pub fn answer(book: &mut Store, request: Request) -> Result<Answer, Refusal> {
    let reply = match request {
        Request::Copies { job } => view::copies::reply(book, job),
        Request::Join { link } => return Ok(Answer::Join(link)),
        Request::Invite => return Ok(Answer::Invite),
        Request::Today => today::today(book),
        Request::Search { words } => today::search(book, &words),
        Request::StartJob { address } => today::start(book, &address),
        Request::Set { setting } => today::set(book, setting),
        Request::Job { job } => job::reply(book, job),
        Request::OpenPad { job, thing, blind } => {
            let sight = if blind {
                pad::Sight::Blind
            } else {
                pad::Sight::Open
            };
            pad::open(book, job, thing, sight)
        }
        Request::ClosePad { job } => pad::close(book, job),
        Request::Press {
            job,
            press,
            key,
            since_ms,
        } => pad::press(
            book,
            job,
            &pad::Pressed {
                press,
                key,
                since_ms,
            },
        ),
        Request::AnswerDouble { job, meant } => pad::answer_double(book, job, meant),
        Request::Chip { job, how, followed } => pad::chip(book, job, how, followed),
        Request::Right { job, reading } => field_book::right(book, job, reading),
        Request::Strike { job, entry, reason } => field_book::strike(book, job, entry, reason),
        Request::SettleAtDesk { job, entries } => field_book::settle_at_desk(book, job, entries),
        Request::Undo { job, entry } => field_book::undo(book, job, entry),
        Request::Redo { job, entry } => field_book::redo(book, job, entry),
        Request::Corner {
            job,
            after_leg,
            turn,
        } => field_book::corner(book, job, after_leg, turn),
        Request::CannotGet { job, thing, reason } => {
            field_book::cannot_get(book, job, thing, reason)
        }
        Request::LegEnd { job, leg, end } => plan::leg_end(book, job, leg, end),
        Request::Pitch { job, leg, read } => plan::pitch(book, job, leg, read),
        Request::HoldStill { looks } => Ok(Reply::Hold(hold::view(&looks))),
        Request::SightPitch {
            job,
            leg,
            photo,
            size,
            marks,
            after,
        } => sight::pitch(
            book,
            job,
            &sight::Marked {
                leg,
                photo,
                size,
                marks,
                after,
            },
        ),
        Request::CapturePitch {
            job,
            leg,
            looks,
            reversed,
            after,
        } => hold::capture(
            book,
            job,
            &hold::Captured {
                leg,
                looks,
                reversed,
                after,
            },
        ),
        Request::HoldPlace { job, at } => visit::hold_place(book, job, at),
        Request::Visit { job, note } => visit::note(book, job, note),
        Request::PhotoFacts { job, photos, word } => photos::said(book, job, &photos, word),
        Request::AddItem {
            job,
            leg,
            item,
            after,
        } => on_roof::add_item(book, job, leg, item, after),
        Request::Saddle { job, number, seen } => on_roof::saddle(book, job, number, seen),
        Request::Layers {
            job,
            layers,
            kind,
            leg,
        } => on_roof::covering(book, job, CoveringObserved { layers, kind, leg }),
        Request::AddChange {
            job,
            number,
            leg,
            sheets,
            consent,
        } => change::found(
            book,
            job,
            &change::Found {
                number,
                leg,
                sheets,
                consent,
            },
        ),
        Request::Plan {
            job,
            width,
            tallest,
            letters,
        } => plan::drawn(book, job, view::drawn::Room::new(width, tallest, letters)),
        Request::Solid { job, from } => plan::solid(book, job, from),
        Request::Takeoff { job } => takeoff::takeoff(book, job),
        Request::SetRate { job, key, value } => takeoff::set_rate(book, job, &key, &value),
        Request::Deck { job, kind, leg } => on_roof::deck(book, job, kind, leg),
        Request::RoofObserved { job, leg, over } => on_roof::roof_seen(book, job, leg, over),
        Request::Packets { job } => job_file::list(book, job),
        Request::MakePacket { job, edition } => {
            let to_make = job_file::to_make(book, job, edition, job_file::Wanted::Newest)?;
            return Ok(Answer::Make(Box::new(to_make)));
        }
        Request::Send {
            job,
            packet,
            to,
            after,
        } => send::begin(book, job, packet.as_deref(), &to, after),
        Request::SendCame { job, send, stage } => send::came(book, job, send, stage),
    };
    reply.map(Answer::Now)
}

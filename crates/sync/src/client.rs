//! One side of the exchange as a machine that does no I/O of its own: it is told what came, and what
//! time it is, and says what to do next.
//!
//! A round: hello; entries that wait are offered, each after the photo that it names; the hub's feed
//! is read to its end; photos that are wanted are fetched; at first, after a restore of the hub and
//! once a day the two sets are compared and what one side lacks moves; then it listens to the feed
//! until something comes or somebody books. A failure anywhere ends the
//! round: the next begins with hello, and what was acknowledged is not asked again.

use crate::fetch::Fetching;
use crate::repair::Comparing;
use crate::rest::Rests;
use crate::send::Sending;
use crate::shelf::{Shelf, ShelfError};
use crate::wire::{Hello, Page, Pushed, Request, Response};
use eavebook_core::book::entry::Entry;
use uuid::Uuid;

/// The protocol spoken.
const PROTOCOL: u32 = 1;
/// Entries of one call.
const ENTRIES: usize = 500;
/// Bytes of one call's entries, room left for what stands around them.
const ENTRIES_BYTES: usize = (1 << 20) - 512;
/// How long the hub is to wait for something new, seconds.
const WAIT_S: u64 = 25;
/// Photos looked at together.
const PHOTOS: usize = 32;
/// How often both sets are compared where nothing speaks against them.
const COMPARED_EVERY_MS: u64 = 24 * 3600 * 1000;

/// What happened.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Event {
    /// The rest is over, or somebody booked: begin a round.
    Begin,
    /// The hub answered.
    Answer(Response),
    /// No answer came, and why.
    Failed(String),
}

/// What is to be done.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Act {
    /// Ask the hub.
    Ask(Request),
    /// All is in step. Ask the hub, which answers when something comes or after a while; ask no
    /// longer once somebody books, and begin.
    Listen(Request),
    /// Rest so many milliseconds, or until somebody books; then begin.
    Rest(u64),
    /// End: only a person can help.
    Stop,
}

/// How it stands.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub enum Standing {
    /// Nothing was compared yet.
    #[default]
    Begun,
    /// All that was here is there, and the other way round, at the end of the last round.
    InStep,
    /// The last round broke off; it will be tried again.
    Waiting {
        /// Why, in a sentence.
        why: String,
    },
    /// It ended.
    Stopped {
        /// Why, with the remedy.
        why: String,
    },
}

/// One device's side.
#[derive(Debug)]
pub struct Client {
    at: At,
    rests: Rests,
    /// Entries offered in one call: fewer after the hub could not read one of many.
    most: usize,
    read_to_end: bool,
    /// Photos may be named that are not here.
    look_for_photos: bool,
    /// They were looked for in this round.
    looked: bool,
    compared_ms: Option<u64>,
    repairs: u64,
    standing: Standing,
    duplicate: bool,
}

/// What was asked last.
#[derive(Debug)]
enum At {
    Rest,
    Hello,
    Push(Vec<Entry>),
    Feed { cursor: String },
    Listening { cursor: String },
    Sending(Sending),
    Fetching(Fetching),
    Comparing(Comparing),
}

/// What a step of the machine comes to.
pub(crate) enum Step<T> {
    /// Ask this, and go on so.
    Ask(Request, T),
    /// This part is done.
    Done,
    /// The hub's answer is not one: the round breaks off.
    Odd(String),
}

impl Client {
    /// A client that has not asked anything. `chance`: any number, another on each device.
    #[must_use]
    pub fn new(chance: u64) -> Client {
        Client {
            at: At::Rest,
            rests: Rests::new(chance),
            most: ENTRIES,
            read_to_end: false,
            look_for_photos: true,
            looked: false,
            compared_ms: None,
            repairs: 0,
            standing: Standing::default(),
            duplicate: false,
        }
    }

    /// How it stands.
    #[must_use]
    pub fn standing(&self) -> &Standing {
        &self.standing
    }

    /// Whether the hub saw two devices with one identity.
    #[must_use]
    pub fn duplicate(&self) -> bool {
        self.duplicate
    }

    /// How often the two sets differed and something moved.
    #[must_use]
    pub fn repairs(&self) -> u64 {
        self.repairs
    }

    /// Takes what happened at a time (milliseconds since 1970) and says what to do.
    pub fn next(&mut self, shelf: &mut dyn Shelf, now_ms: u64, event: Event) -> Act {
        let told = match event {
            Event::Begin => return self.begin(),
            Event::Failed(why) => return self.break_off(why, None),
            Event::Answer(answer) => self.answered(shelf, now_ms, answer),
        };
        told.unwrap_or_else(|why: ShelfError| self.break_off(why.to_string(), None))
    }

    fn begin(&mut self) -> Act {
        self.read_to_end = false;
        self.looked = false;
        self.at = At::Hello;
        Act::Ask(Request::get("/v1/hello"))
    }

    fn break_off(&mut self, why: String, retry_after: Option<u64>) -> Act {
        self.at = At::Rest;
        self.standing = Standing::Waiting { why };
        Act::Rest(self.rests.after_failure(retry_after))
    }

    fn stop(&mut self, why: String) -> Act {
        self.at = At::Rest;
        self.standing = Standing::Stopped { why };
        Act::Stop
    }

    fn answered(
        &mut self,
        shelf: &mut dyn Shelf,
        now_ms: u64,
        answer: Response,
    ) -> Result<Act, ShelfError> {
        match answer.status {
            401 | 403 => {
                let why = "the hub no longer lets this device in: what is booked stays here, and \
                           pairs again with a new link from the hub's keeper";
                return Ok(self.stop(why.to_owned()));
            }
            426 => {
                let why = "the hub speaks another version: update this program or the hub; what is \
                           booked stays here";
                return Ok(self.stop(why.to_owned()));
            }
            409 if answer.problem().code == "epoch" => {
                return Ok(self.break_off("the hub was restored meanwhile".to_owned(), None));
            }
            410 => {
                // It has less than it had, whatever its epoch says.
                if let Some(met) = shelf.met()? {
                    shelf.meet(&met.id, &met.epoch)?;
                    self.compared_ms = None;
                }
                let why = "the hub has less than it had: everything is offered again";
                return Ok(self.break_off(why.to_owned(), None));
            }
            408 | 429 | 500..=599 => {
                let why = format!("the hub cannot answer now ({})", answer.status);
                return Ok(self.break_off(why, answer.retry_after));
            }
            _ => {}
        }
        match std::mem::replace(&mut self.at, At::Rest) {
            At::Rest => Ok(self.break_off("an answer came to no question".to_owned(), None)),
            At::Hello => self.greeted(shelf, now_ms, &answer),
            At::Push(batch) => self.pushed(shelf, now_ms, &batch, &answer),
            At::Feed { cursor } => self.fed(shelf, now_ms, &cursor, &answer),
            At::Listening { cursor } => {
                let page = answer.read::<Page>().filter(|_| answer.status == 200);
                if page.is_some_and(|page| page.entries.is_empty() && page.next == cursor) {
                    // Quiet: whether it is still the hub that was met is asked again.
                    return Ok(self.begin());
                }
                self.looked = false;
                self.fed(shelf, now_ms, &cursor, &answer)
            }
            At::Sending(sending) => {
                let step = sending.answered(shelf, &answer)?;
                self.go_on(shelf, now_ms, step, At::Sending)
            }
            At::Fetching(fetching) => {
                let step = fetching.answered(shelf, answer)?;
                self.go_on(shelf, now_ms, step, At::Fetching)
            }
            At::Comparing(comparing) => {
                let step = comparing.answered(shelf, now_ms, &answer, &mut self.repairs)?;
                if matches!(step, Step::Done) {
                    self.compared_ms = Some(now_ms);
                    self.look_for_photos = true;
                }
                self.go_on(shelf, now_ms, step, At::Comparing)
            }
        }
    }

    fn go_on<T>(
        &mut self,
        shelf: &mut dyn Shelf,
        now_ms: u64,
        step: Step<T>,
        at: impl FnOnce(T) -> At,
    ) -> Result<Act, ShelfError> {
        match step {
            Step::Ask(request, next) => {
                self.at = at(next);
                Ok(Act::Ask(request))
            }
            Step::Done => self.decide(shelf, now_ms),
            Step::Odd(what) => Ok(self.odd(&what)),
        }
    }

    fn odd(&mut self, what: &str) -> Act {
        self.break_off(
            format!("the hub's answer to {what} cannot be read: it is asked again"),
            None,
        )
    }

    fn greeted(
        &mut self,
        shelf: &mut dyn Shelf,
        now_ms: u64,
        answer: &Response,
    ) -> Result<Act, ShelfError> {
        let hello = match answer.read::<Hello>() {
            Some(hello) if answer.status == 200 => hello,
            _ => return Ok(self.odd("hello")),
        };
        if !(hello.protocol.min..=hello.protocol.max).contains(&PROTOCOL) {
            let why = "the hub speaks another version: update this program or the hub; what is \
                       booked stays here";
            return Ok(self.stop(why.to_owned()));
        }
        self.duplicate = hello.duplicate;
        let met = shelf.met()?;
        if met.is_none_or(|met| (met.id, met.epoch) != (hello.hub_id.clone(), hello.epoch.clone()))
        {
            shelf.meet(&hello.hub_id, &hello.epoch)?;
            self.compared_ms = None;
        }
        // Counts that the hub has and this store has not given: it was restored from a copy.
        if let Some(life) = shelf.life()? {
            let name = life.incarnation.to_string();
            let ahead =
                |own: &crate::wire::OwnLife| own.incarnation == name && own.max_dseq > life.dseq;
            if hello.own.iter().any(ahead) {
                shelf.begin_life()?;
                self.compared_ms = None;
            }
        }
        self.decide(shelf, now_ms)
    }

    /// What is to be done first.
    fn decide(&mut self, shelf: &mut dyn Shelf, now_ms: u64) -> Result<Act, ShelfError> {
        let Some(met) = shelf.met()? else {
            return Ok(self.break_off("no hub was met".to_owned(), None));
        };
        let batch = shelf.waiting(self.most, ENTRIES_BYTES)?;
        if !batch.is_empty() {
            let texts: Vec<String> = batch.iter().map(Entry::to_json).collect();
            let epoch = serde_json::Value::from(met.epoch);
            let body = format!("{{\"epoch\":{epoch},\"entries\":[{}]}}", texts.join(","));
            self.at = At::Push(batch);
            return Ok(Act::Ask(Request::post("/v1/entries", body)));
        }
        let photos = shelf.photos_waiting(PHOTOS)?;
        if !photos.is_empty() {
            let (request, sending) = Sending::begin(photos);
            self.at = At::Sending(sending);
            return Ok(Act::Ask(request));
        }
        if !self.read_to_end {
            let request = Request::get(format!("/v1/feed?after={}&limit=500", met.cursor));
            self.at = At::Feed { cursor: met.cursor };
            return Ok(Act::Ask(request));
        }
        if self
            .compared_ms
            .is_none_or(|then| now_ms.abs_diff(then) > COMPARED_EVERY_MS)
        {
            let (request, comparing) = Comparing::begin(shelf)?;
            self.at = At::Comparing(comparing);
            return Ok(Act::Ask(request));
        }
        // What the hub has not either is looked for again in the next round.
        if self.look_for_photos && !self.looked {
            self.looked = true;
            if let Some((request, fetching)) = Fetching::begin(shelf)? {
                self.at = At::Fetching(fetching);
                return Ok(Act::Ask(request));
            }
            self.look_for_photos = false;
        }
        self.rests.went_well();
        self.standing = Standing::InStep;
        let path = format!("/v1/feed?after={}&limit=500&wait={WAIT_S}", met.cursor);
        self.at = At::Listening { cursor: met.cursor };
        Ok(Act::Listen(Request::get(path)))
    }

    fn pushed(
        &mut self,
        shelf: &mut dyn Shelf,
        now_ms: u64,
        batch: &[Entry],
        answer: &Response,
    ) -> Result<Act, ShelfError> {
        if matches!(answer.status, 400 | 413 | 422) {
            // One that cannot be read must not hold up the others: fewer at once, down to it.
            if let [one] = batch {
                shelf.turn_back(&one.id.to_string(), &answer.problem().detail)?;
            } else {
                self.most = (batch.len() / 2).max(1);
            }
            return self.decide(shelf, now_ms);
        }
        let pushed = match answer.read::<Pushed>() {
            Some(pushed) if answer.status == 200 && pushed.results.len() == batch.len() => pushed,
            _ => return Ok(self.odd("entries")),
        };
        let mut there: Vec<Uuid> = Vec::new();
        for (entry, became) in batch.iter().zip(&pushed.results) {
            let id = entry.id.to_string();
            match became.status.as_str() {
                // In a conflict the hub keeps both, this one too.
                "new" | "known" | "id_conflict" if became.id == id.as_str() => {
                    there.push(entry.id);
                }
                "rejected" => {
                    shelf.turn_back(&id, became.reason.as_deref().unwrap_or("no reason given"))?;
                }
                _ => return Ok(self.odd("entries")),
            }
        }
        shelf.acknowledge(&there)?;
        self.most = (self.most * 2).min(ENTRIES);
        self.decide(shelf, now_ms)
    }

    fn fed(
        &mut self,
        shelf: &mut dyn Shelf,
        now_ms: u64,
        cursor: &str,
        answer: &Response,
    ) -> Result<Act, ShelfError> {
        let page = match answer.read::<Page>() {
            // A page that says there is more and does not move would be read for ever.
            Some(page) if answer.status == 200 && !(page.more && page.next == cursor) => page,
            _ => return Ok(self.odd("the feed")),
        };
        let texts = texts(&page);
        if !texts.is_empty() {
            shelf.receive(&texts, Some(&page.next), now_ms)?;
            // Also where all are known: a hub that was restored gets its photos again just before.
            self.look_for_photos = true;
        } else if page.next != cursor {
            shelf.receive(&[], Some(&page.next), now_ms)?;
        }
        self.read_to_end = !page.more;
        self.decide(shelf, now_ms)
    }
}

pub(crate) fn texts(page: &Page) -> Vec<String> {
    page.entries
        .iter()
        .map(|one| one.entry.get().to_owned())
        .collect()
}

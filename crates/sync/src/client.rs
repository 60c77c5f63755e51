//! One side of the exchange as a machine that does no I/O of its own: it is told what came, and what
//! time it is, and says what to do next.
//!
//! A round: hello; entries that wait are offered, each after the photo that it names; the hub's feed
//! is read to its end; photos that are wanted are fetched; at first, after a restore of the hub and
//! once a day the two sets are compared and what one side lacks moves; then it listens to the feed
//! until something comes or somebody books. A failure anywhere ends the
//! round: the next begins with hello, and what was acknowledged is not asked again.

use crate::backoff::Backoff;
use crate::fetch::Fetch;
use crate::repair::Comparison;
use crate::sync_store::{SyncStore, SyncStoreError};
use crate::upload::Upload;
use crate::wire::{Hello, Page, PushReply, Request, Response};
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
pub enum SyncStatus {
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
    phase: Phase,
    backoff: Backoff,
    /// Entries offered in one call: fewer after the hub could not read one of many.
    most: usize,
    read_to_end: bool,
    /// Photos may be named that are not here.
    look_for_photos: bool,
    /// They were looked for in this round.
    looked: bool,
    compared_ms: Option<u64>,
    repairs: u64,
    status: SyncStatus,
    duplicate: bool,
}

/// What was asked last.
#[derive(Debug)]
enum Phase {
    Rest,
    Hello,
    Push(Vec<Entry>),
    Feed { cursor: String },
    Listening { cursor: String },
    Upload(Upload),
    Fetch(Fetch),
    Comparison(Comparison),
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
            phase: Phase::Rest,
            backoff: Backoff::new(chance),
            most: ENTRIES,
            read_to_end: false,
            look_for_photos: true,
            looked: false,
            compared_ms: None,
            repairs: 0,
            status: SyncStatus::default(),
            duplicate: false,
        }
    }

    /// How it stands.
    #[must_use]
    pub fn status(&self) -> &SyncStatus {
        &self.status
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
    pub fn next(&mut self, store: &mut dyn SyncStore, now_ms: u64, event: Event) -> Act {
        let act = match event {
            Event::Begin => return self.begin(),
            Event::Failed(why) => return self.break_off(why, None),
            Event::Answer(answer) => self.answered(store, now_ms, answer),
        };
        act.unwrap_or_else(|why: SyncStoreError| self.break_off(why.to_string(), None))
    }

    fn begin(&mut self) -> Act {
        self.read_to_end = false;
        self.looked = false;
        self.phase = Phase::Hello;
        Act::Ask(Request::get("/v1/hello"))
    }

    fn break_off(&mut self, why: String, retry_after: Option<u64>) -> Act {
        self.phase = Phase::Rest;
        self.status = SyncStatus::Waiting { why };
        Act::Rest(self.backoff.after_failure(retry_after))
    }

    fn stop(&mut self, why: String) -> Act {
        self.phase = Phase::Rest;
        self.status = SyncStatus::Stopped { why };
        Act::Stop
    }

    fn answered(
        &mut self,
        store: &mut dyn SyncStore,
        now_ms: u64,
        answer: Response,
    ) -> Result<Act, SyncStoreError> {
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
                if let Some(hub) = store.known_hub()? {
                    store.meet(&hub.id, &hub.epoch)?;
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
        match std::mem::replace(&mut self.phase, Phase::Rest) {
            Phase::Rest => Ok(self.break_off("an answer came to no question".to_owned(), None)),
            Phase::Hello => self.greeted(store, now_ms, &answer),
            Phase::Push(batch) => self.pushed(store, now_ms, &batch, &answer),
            Phase::Feed { cursor } => self.fed(store, now_ms, &cursor, &answer),
            Phase::Listening { cursor } => {
                let page = answer.read::<Page>().filter(|_| answer.status == 200);
                if page.is_some_and(|page| page.entries.is_empty() && page.next == cursor) {
                    // Quiet: whether it is still the hub that was met is asked again.
                    return Ok(self.begin());
                }
                self.looked = false;
                self.fed(store, now_ms, &cursor, &answer)
            }
            Phase::Upload(sending) => {
                let step = sending.answered(store, &answer)?;
                self.go_on(store, now_ms, step, Phase::Upload)
            }
            Phase::Fetch(fetching) => {
                let step = fetching.answered(store, answer)?;
                self.go_on(store, now_ms, step, Phase::Fetch)
            }
            Phase::Comparison(comparing) => {
                let step = comparing.answered(store, now_ms, &answer, &mut self.repairs)?;
                if matches!(step, Step::Done) {
                    self.compared_ms = Some(now_ms);
                    self.look_for_photos = true;
                }
                self.go_on(store, now_ms, step, Phase::Comparison)
            }
        }
    }

    fn go_on<T>(
        &mut self,
        store: &mut dyn SyncStore,
        now_ms: u64,
        step: Step<T>,
        phase: impl FnOnce(T) -> Phase,
    ) -> Result<Act, SyncStoreError> {
        match step {
            Step::Ask(request, next) => {
                self.phase = phase(next);
                Ok(Act::Ask(request))
            }
            Step::Done => self.decide(store, now_ms),
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
        store: &mut dyn SyncStore,
        now_ms: u64,
        answer: &Response,
    ) -> Result<Act, SyncStoreError> {
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
        let hub = store.known_hub()?;
        if hub.is_none_or(|hub| (hub.id, hub.epoch) != (hello.hub_id.clone(), hello.epoch.clone()))
        {
            store.meet(&hello.hub_id, &hello.epoch)?;
            self.compared_ms = None;
        }
        // Counts that the hub has and this store has not given: it was restored from a copy.
        if let Some(life) = store.life()? {
            let name = life.incarnation.to_string();
            let ahead =
                |own: &crate::wire::OwnLife| own.incarnation == name && own.max_dseq > life.dseq;
            if hello.own.iter().any(ahead) {
                store.begin_life()?;
                self.compared_ms = None;
            }
        }
        self.decide(store, now_ms)
    }

    /// What is to be done first.
    fn decide(&mut self, store: &mut dyn SyncStore, now_ms: u64) -> Result<Act, SyncStoreError> {
        let Some(hub) = store.known_hub()? else {
            return Ok(self.break_off("no hub was met".to_owned(), None));
        };
        let batch = store.waiting(self.most, ENTRIES_BYTES)?;
        if !batch.is_empty() {
            let texts: Vec<String> = batch.iter().map(Entry::to_json).collect();
            let epoch = serde_json::Value::from(hub.epoch);
            let body = format!("{{\"epoch\":{epoch},\"entries\":[{}]}}", texts.join(","));
            self.phase = Phase::Push(batch);
            return Ok(Act::Ask(Request::post("/v1/entries", body)));
        }
        let photos = store.photos_waiting(PHOTOS)?;
        if !photos.is_empty() {
            let (request, sending) = Upload::begin(photos);
            self.phase = Phase::Upload(sending);
            return Ok(Act::Ask(request));
        }
        if !self.read_to_end {
            let request = Request::get(format!("/v1/feed?after={}&limit=500", hub.cursor));
            self.phase = Phase::Feed { cursor: hub.cursor };
            return Ok(Act::Ask(request));
        }
        if self
            .compared_ms
            .is_none_or(|then| now_ms.abs_diff(then) > COMPARED_EVERY_MS)
        {
            let (request, comparing) = Comparison::begin(store)?;
            self.phase = Phase::Comparison(comparing);
            return Ok(Act::Ask(request));
        }
        // What the hub has not either is looked for again in the next round.
        if self.look_for_photos && !self.looked {
            self.looked = true;
            if let Some((request, fetching)) = Fetch::begin(store)? {
                self.phase = Phase::Fetch(fetching);
                return Ok(Act::Ask(request));
            }
            self.look_for_photos = false;
        }
        self.backoff.went_well();
        self.status = SyncStatus::InStep;
        let path = format!("/v1/feed?after={}&limit=500&wait={WAIT_S}", hub.cursor);
        self.phase = Phase::Listening { cursor: hub.cursor };
        Ok(Act::Listen(Request::get(path)))
    }

    fn pushed(
        &mut self,
        store: &mut dyn SyncStore,
        now_ms: u64,
        batch: &[Entry],
        answer: &Response,
    ) -> Result<Act, SyncStoreError> {
        if matches!(answer.status, 400 | 413 | 422) {
            // One that cannot be read must not hold up the others: fewer at once, down to it.
            if let [entry] = batch {
                store.turn_back(&entry.id.to_string(), &answer.problem().detail)?;
            } else {
                self.most = (batch.len() / 2).max(1);
            }
            return self.decide(store, now_ms);
        }
        let pushed = match answer.read::<PushReply>() {
            Some(pushed) if answer.status == 200 && pushed.results.len() == batch.len() => pushed,
            _ => return Ok(self.odd("entries")),
        };
        let mut acknowledged: Vec<Uuid> = Vec::new();
        for (entry, result) in batch.iter().zip(&pushed.results) {
            let id = entry.id.to_string();
            match result.status.as_str() {
                // In a conflict the hub keeps both, this one too.
                "new" | "known" | "id_conflict" if result.id == id.as_str() => {
                    acknowledged.push(entry.id);
                }
                "rejected" => {
                    store.turn_back(&id, result.reason.as_deref().unwrap_or("no reason given"))?;
                }
                _ => return Ok(self.odd("entries")),
            }
        }
        store.acknowledge(&acknowledged)?;
        self.most = (self.most * 2).min(ENTRIES);
        self.decide(store, now_ms)
    }

    fn fed(
        &mut self,
        store: &mut dyn SyncStore,
        now_ms: u64,
        cursor: &str,
        answer: &Response,
    ) -> Result<Act, SyncStoreError> {
        let page = match answer.read::<Page>() {
            // A page that says there is more and does not move would be read for ever.
            Some(page) if answer.status == 200 && !(page.more && page.next == cursor) => page,
            _ => return Ok(self.odd("the feed")),
        };
        let texts = texts(&page);
        if !texts.is_empty() {
            store.receive(&texts, Some(&page.next), now_ms)?;
            // Also where all are known: a hub that was restored gets its photos again just before.
            self.look_for_photos = true;
        } else if page.next != cursor {
            store.receive(&[], Some(&page.next), now_ms)?;
        }
        self.read_to_end = !page.more;
        self.decide(store, now_ms)
    }
}

pub(crate) fn texts(page: &Page) -> Vec<String> {
    page.entries
        .iter()
        .map(|item| item.entry.get().to_owned())
        .collect()
}

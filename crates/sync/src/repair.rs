//! Whether both sides hold one set of entries; where not, which differ: by job, then by the last
//! byte of the id, then by id. What the hub lacks is offered again, what this side lacks is read
//! again from its job's feed. Nothing is ever taken away.

use crate::client::{Step, texts};
use crate::sync_store::{SyncStore, SyncStoreError};
use crate::wire::{Conflicts, DigestReply, Page, Request, Response};
use eavebook_core::book::digest::SetDigest;
use eavebook_core::book::scope::Scope;
use eavebook_store::EntryDigest;
use serde_json::json;
use std::collections::{BTreeMap, BTreeSet};
use uuid::Uuid;

#[derive(Debug)]
pub(crate) struct Comparison {
    held: Vec<EntryDigest>,
    /// Sets to compare yet.
    left: Vec<Scope>,
    asked: Scope,
    /// Jobs of which this side lacks entries.
    lacks: BTreeSet<Uuid>,
    step: RepairStep,
}

#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum RepairStep {
    Comparing,
    Reading,
    Conflicts,
}

impl Comparison {
    pub fn begin(store: &mut dyn SyncStore) -> Result<(Request, Comparison), SyncStoreError> {
        let comparing = Comparison {
            held: store.held()?,
            left: Vec::new(),
            asked: Scope::Company,
            lacks: BTreeSet::new(),
            step: RepairStep::Comparing,
        };
        Ok(comparing.compare(Scope::Company))
    }

    pub fn answered(
        mut self,
        store: &mut dyn SyncStore,
        now_ms: u64,
        answer: &Response,
        repairs: &mut u64,
    ) -> Result<Step<Comparison>, SyncStoreError> {
        if answer.status != 200 {
            return Ok(Step::Odd("a comparison".to_owned()));
        }
        match self.step {
            RepairStep::Comparing => {
                let Some(compared) = answer.read::<DigestReply>() else {
                    return Ok(Step::Odd("a comparison".to_owned()));
                };
                if !compared.same {
                    let offered = self.differ(&compared);
                    *repairs += offered.len() as u64;
                    store.offer_again(&offered)?;
                }
                if let Some(scope) = self.left.pop() {
                    let (request, comparing) = self.compare(scope);
                    return Ok(Step::Ask(request, comparing));
                }
                if !self.lacks.is_empty() {
                    return Ok(self.read_from(""));
                }
                Ok(self.ask_conflicts())
            }
            RepairStep::Reading => {
                let Some(page) = answer.read::<Page>() else {
                    return Ok(Step::Odd("the feed".to_owned()));
                };
                *repairs += store.receive(&texts(&page), None, now_ms)? as u64;
                if page.more && !page.next.is_empty() {
                    return Ok(self.read_from(&page.next));
                }
                Ok(self.ask_conflicts())
            }
            RepairStep::Conflicts => {
                let Some(conflicts) = answer.read::<Conflicts>() else {
                    return Ok(Step::Odd("conflicts".to_owned()));
                };
                let texts: Vec<String> = conflicts
                    .conflicts
                    .iter()
                    .map(|text| text.get().to_owned())
                    .collect();
                if !texts.is_empty() {
                    store.receive(&texts, None, now_ms)?;
                }
                Ok(Step::Done)
            }
        }
    }

    /// Both contents of an id that was taken twice are kept and shown on every device.
    fn ask_conflicts(mut self) -> Step<Comparison> {
        self.step = RepairStep::Conflicts;
        Step::Ask(Request::get("/v1/conflicts"), self)
    }

    fn compare(mut self, scope: Scope) -> (Request, Comparison) {
        let sum = digest(
            self.held
                .iter()
                .filter(|entry| scope.holds(entry.book, entry.id)),
        );
        let body = json!({ "scope": scope.to_string(), "count": sum.count, "sum": sum.hex() });
        self.asked = scope;
        (Request::post("/v1/digest", body.to_string()), self)
    }

    fn read_from(mut self, cursor: &str) -> Step<Comparison> {
        let books: Vec<String> = self.lacks.iter().map(Uuid::to_string).collect();
        let request = Request::get(format!(
            "/v1/feed?after={cursor}&limit=500&books={}",
            books.join(",")
        ));
        self.step = RepairStep::Reading;
        Step::Ask(request, self)
    }

    /// Notes where the two sides differ; gives what the hub lacks.
    fn differ(&mut self, reply: &DigestReply) -> Vec<Uuid> {
        let asked = self.asked;
        let own = || {
            self.held
                .iter()
                .filter(move |entry| asked.holds(entry.book, entry.id))
        };
        if let Scope::Byte(book, _) = asked {
            let theirs: BTreeSet<Uuid> = reply.ids.iter().copied().collect();
            let ours: BTreeSet<Uuid> = own().map(|entry| entry.id).collect();
            if !theirs.is_subset(&ours) {
                self.lacks.insert(book);
            }
            return ours.difference(&theirs).copied().collect();
        }
        let mut ours: BTreeMap<String, (Scope, SetDigest, Vec<Uuid>)> = BTreeMap::new();
        for entry in own() {
            let part = asked.part(entry.book, entry.id);
            let (_, sum, ids) = ours
                .entry(part.to_string())
                .or_insert_with(|| (part, SetDigest::default(), Vec::new()));
            *sum = sum.with(entry.id, &entry.sha256);
            ids.push(entry.id);
        }
        let mut left = Vec::new();
        let mut lacks = Vec::new();
        for theirs in &reply.scopes {
            match ours.remove(&theirs.scope) {
                Some((_, sum, _))
                    if (sum.count, sum.hex()) == (theirs.count, theirs.sum.clone()) => {}
                Some((scope, ..)) => left.push(scope),
                None => lacks.extend(Scope::read(&theirs.scope).and_then(Scope::book)),
            }
        }
        let offered = ours.into_values().flat_map(|(_, _, ids)| ids).collect();
        self.left.extend(left);
        self.lacks.extend(lacks);
        offered
    }
}

fn digest<'a>(held: impl Iterator<Item = &'a EntryDigest>) -> SetDigest {
    held.fold(SetDigest::default(), |sum, entry| {
        sum.with(entry.id, &entry.sha256)
    })
}

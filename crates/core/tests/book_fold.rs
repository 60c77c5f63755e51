//! Entries, their fold, strikes, undo and redo.

use eavebook_core::book::clock::Hlc;
use eavebook_core::book::entry::{Entry, EntryError, ParsedBody, Stamp, sha256_hex};
use eavebook_core::book::fold::{FieldBook, TakenOut, fold};
use eavebook_core::book::kinds::*;
use eavebook_core::book::on_roof;
use eavebook_core::book::subject::Subject;
use proptest::prelude::*;
use uuid::Uuid;

/// A device that books: ids and times come from its count.
struct Device {
    number: u8,
    count: u64,
    booked: Vec<Entry>,
}

impl Device {
    fn new(number: u8) -> Device {
        Device {
            number,
            count: 0,
            booked: Vec::new(),
        }
    }

    fn id(&self) -> Uuid {
        Uuid::from_u128(u128::from(self.number))
    }

    fn book(&mut self, kind: &Kind, supersedes: &[Uuid]) -> Uuid {
        self.count += 1;
        let mut id = [0; 16];
        id[0] = self.number;
        id[8..].copy_from_slice(&self.count.to_be_bytes());
        let stamp = Stamp {
            id: uuid::Builder::from_bytes(id)
                .with_version(uuid::Version::SortRand)
                .with_variant(uuid::Variant::RFC4122)
                .into_uuid(),
            book: Uuid::nil(),
            device: self.id(),
            incarnation: self.id(),
            dseq: self.count,
            author: format!("person {}", self.number),
            hlc: Hlc::new(1_800_000_000_000 + self.count, 0),
            local_time: "2026-05-02T14:41:07-05:00".into(),
        };
        let id = stamp.id;
        self.booked
            .push(Entry::new(stamp, kind, supersedes.to_vec()));
        id
    }

    fn reads(&mut self, leg: u32, text: &str) -> Uuid {
        self.book(&reading(leg, text), &[])
    }

    fn told(&self) -> FieldBook {
        fold(&self.booked)
    }

    fn undoes(&mut self) -> Option<Uuid> {
        let step = self.told().undo_of(self.id())?.entry;
        Some(self.book(&Kind::Undo(Undo {}), &[step]))
    }

    fn redoes(&mut self) -> Option<Uuid> {
        let undo = self.told().redo_of(self.id())?.entry;
        Some(self.book(&Kind::Redo(Redo {}), &[undo]))
    }

    /// Texts of the readings in force.
    fn stands(&self) -> Vec<String> {
        let told = self.told();
        told.readings
            .iter()
            .filter(|r| r.struck.is_none())
            .map(|r| r.text.clone())
            .collect()
    }
}

fn reading(leg: u32, text: &str) -> Kind {
    Kind::Reading(Reading {
        thing: Thing::Leg { leg },
        text: text.into(),
        tape: TapeMarks::FeetInches,
        how: HowRead::Taped,
        followed: Followed::EaveEdge,
        blind: false,
    })
}

fn strike(reason: &str) -> Kind {
    Kind::Strike(Strike {
        reason: Some(reason.into()),
    })
}

fn corner(after_leg: u32, turn: Turn) -> Kind {
    Kind::Corner(Corner {
        after_leg,
        turn,
        building_on: Side::Right,
    })
}

#[test]
fn a_struck_reading_stays_readable_with_who_when_why_and_both_values() {
    let mut phone = Device::new(1);
    let first = phone.reads(2, "42 ft");
    let struck_by = phone.book(&strike("swapped digits"), &[first]);
    phone.reads(2, "24 ft");
    let told = phone.told();
    let texts: Vec<_> = told.readings.iter().map(|r| r.text.as_str()).collect();
    assert_eq!(texts, ["42 ft", "24 ft"]);
    let struck = told.readings[0].struck.as_ref().unwrap();
    assert_eq!((struck.by, struck.how), (struck_by, TakenOut::Strike));
    assert_eq!(struck.reason.as_deref(), Some("swapped digits"));
    assert_eq!(
        (struck.author.as_str(), struck.device),
        ("person 1", phone.id())
    );
    assert_eq!(told.in_force_of(&Thing::Leg { leg: 2 }).count(), 1);
    assert_eq!(told.story(&Subject::Thing(Thing::Leg { leg: 2 })).len(), 3);
}

#[test]
fn an_undo_of_the_strike_lets_the_reading_stand_again_and_a_redo_strikes_it_again() {
    let mut phone = Device::new(1);
    let first = phone.reads(2, "42 ft");
    phone.book(&strike("wrong"), &[first]);
    assert!(phone.stands().is_empty());
    phone.undoes().unwrap();
    assert_eq!(phone.stands(), ["42 ft"]);
    phone.redoes().unwrap();
    assert!(phone.stands().is_empty());
    assert_eq!(
        phone
            .told()
            .story(&Subject::Thing(Thing::Leg { leg: 2 }))
            .len(),
        4
    );
}

#[test]
fn undo_takes_back_the_last_step_then_the_one_before_and_redo_walks_back_up() {
    let mut phone = Device::new(1);
    for leg in 1..=3 {
        phone.reads(leg, &format!("{leg}0 ft"));
    }
    phone.undoes().unwrap();
    phone.undoes().unwrap();
    assert_eq!(phone.stands(), ["10 ft"]);
    phone.redoes().unwrap();
    assert_eq!(phone.stands(), ["10 ft", "20 ft"]);
    phone.redoes().unwrap();
    assert_eq!(phone.stands(), ["10 ft", "20 ft", "30 ft"]);
    assert_eq!(phone.redoes(), None);
    phone.undoes().unwrap();
    phone.reads(4, "40 ft");
    assert_eq!(
        phone.redoes(),
        None,
        "a new step leaves nothing to do again"
    );
    assert_eq!(phone.stands(), ["10 ft", "20 ft", "40 ft"]);
}

#[test]
fn a_taken_back_reading_says_that_its_booking_was_taken_back() {
    let mut phone = Device::new(1);
    phone.reads(1, "42 ft");
    phone.undoes().unwrap();
    assert_eq!(
        phone.told().readings[0].struck.as_ref().unwrap().how,
        TakenOut::Undo
    );
}

#[test]
fn undo_on_one_device_never_takes_back_what_another_booked() {
    let (mut phone, mut laptop) = (Device::new(1), Device::new(2));
    phone.reads(1, "42 ft");
    laptop.reads(2, "20 ft");
    let told = fold(phone.booked.iter().chain(&laptop.booked));
    assert_eq!(told.undo_of(phone.id()).unwrap().entry, phone.booked[0].id);
    assert_eq!(told.undo_of(Uuid::from_u128(9)), None);
}

#[test]
fn a_read_back_answered_right_is_no_step_and_is_shown_with_its_reading() {
    let mut phone = Device::new(1);
    let first = phone.reads(1, "42 ft");
    phone.book(&Kind::ReadBackRight(About { entry: first }), &[]);
    let told = phone.told();
    assert!(told.readings[0].read_back);
    assert_eq!(told.undo_of(phone.id()).unwrap().entry, first);
    assert_eq!(phone.booked[1].refs, [first.to_string()]);
}

#[test]
fn what_is_settled_at_the_desk_stands_beside_the_reading_and_can_be_taken_back() {
    let mut phone = Device::new(1);
    let first = phone.reads(1, "42 ft");
    let before = phone.told().readings;
    let settled = SettledAtDesk {
        entries: vec![first],
    };
    phone.book(&Kind::SettledAtDesk(settled), &[]);
    let told = phone.told();
    assert!(told.settled.contains(&first));
    assert_eq!(told.readings, before);
    assert_eq!(phone.booked[1].refs, [first.to_string()]);
    let story = told.story(&Subject::Thing(Thing::Leg { leg: 1 }));
    assert_eq!(story.len(), 2);
    phone.undoes().unwrap();
    assert!(phone.told().settled.is_empty());
}

#[test]
fn a_corner_booked_anew_replaces_every_earlier_one_and_undo_brings_back_the_last() {
    let mut phone = Device::new(1);
    for turn in [Turn::Outside, Turn::Inside, Turn::Straight] {
        let earlier = phone.told().replaced_by_new(&Subject::CornerAfter(1));
        phone.book(&corner(1, turn), &earlier);
    }
    let turns = |told: &FieldBook| told.corners.iter().map(|c| c.1.turn).collect::<Vec<_>>();
    assert_eq!(turns(&phone.told()), [Turn::Straight]);
    phone.undoes().unwrap();
    assert_eq!(turns(&phone.told()), [Turn::Inside]);
}

#[test]
fn two_corrections_made_at_once_are_both_shown() {
    let (mut phone, mut laptop) = (Device::new(1), Device::new(2));
    let first = phone.book(&corner(1, Turn::Outside), &[]);
    phone.book(&corner(1, Turn::Inside), &[first]);
    laptop.book(&corner(1, Turn::Straight), &[first]);
    assert_eq!(
        fold(phone.booked.iter().chain(&laptop.booked))
            .corners
            .len(),
        2
    );
}

#[test]
fn a_strike_that_comes_before_its_reading_waits_for_it() {
    let mut phone = Device::new(1);
    let first = phone.reads(1, "42 ft");
    let strike = phone.book(&strike("no"), &[first]);
    let early = fold(&phone.booked[1..]);
    assert_eq!((early.awaited, early.acts[0].entry), (vec![first], strike));
    assert!(phone.stands().is_empty());
}

#[test]
fn one_id_with_two_contents_is_flagged_and_neither_order_matters() {
    let mut phone = Device::new(1);
    phone.reads(1, "42 ft");
    let a = phone.booked[0].clone();
    let mut b = a.clone();
    b.body = b.body.replace("42 ft", "24 ft");
    b.sha256 = sha256_hex(b.body.as_bytes());
    let one = fold([&a, &b]);
    assert_eq!(one.id_conflicts, [a.id]);
    assert_eq!(one, fold([&b, &a, &b]));
}

#[test]
fn a_kind_of_a_newer_version_is_kept_shown_as_unknown_and_still_supersedes() {
    let mut phone = Device::new(1);
    let first = phone.reads(1, "42 ft");
    let mut later = phone.booked[0].clone();
    later.id = Uuid::from_u128(first.as_u128() + 1);
    later.kind = "laser_sweep".into();
    later.body = "{\"points\": [1.50, 2.0e1],  \"\\u0000\": \"\u{0}\"}".into();
    later.sha256 = sha256_hex(later.body.as_bytes());
    later.supersedes = vec![first];
    later
        .other
        .insert("beam".into(), "{\"nm\": 6.350e2}".into());
    phone
        .booked
        .push(Entry::from_json(&later.to_json()).unwrap());
    assert_eq!(phone.booked[1], later);
    let told = phone.told();
    assert_eq!(told.unknown, [later.id]);
    assert_eq!(
        told.readings[0].struck.as_ref().unwrap().how,
        TakenOut::Replaced
    );
}

#[test]
fn a_known_kind_of_a_newer_version_is_read_as_far_as_understood() {
    let mut phone = Device::new(1);
    phone.reads(1, "42 ft");
    let entry = &mut phone.booked[0];
    entry.kind_version = 2;
    entry.body = entry.body.replacen('{', "{\"laser\":true,", 1);
    entry.sha256 = sha256_hex(entry.body.as_bytes());
    assert!(matches!(
        entry.parsed_body(),
        ParsedBody::Newer(Kind::Reading(_))
    ));
    let told = phone.told();
    assert_eq!(
        (told.newer.len(), told.readings[0].text.as_str()),
        (1, "42 ft")
    );
}

#[test]
fn what_is_no_entry_is_refused_by_what_is_wrong_with_it() {
    let mut phone = Device::new(1);
    phone.reads(1, "42 ft");
    let good = phone.booked[0].clone();
    let refused = |change: &dyn Fn(&mut Entry)| {
        let mut bad = good.clone();
        change(&mut bad);
        Entry::from_json(&bad.to_json()).unwrap_err()
    };
    assert_eq!(
        refused(&|e| e.body.push(' ')).to_string(),
        format!(
            "the body of entry {} does not match its SHA-256: fetch it again from a whole copy",
            good.id
        )
    );
    assert!(matches!(
        refused(&|e| e.id = Uuid::nil()),
        EntryError::Id(_)
    ));
    let bad_time = refused(&|e| e.local_time = "14:41".into()).to_string();
    assert!(bad_time.ends_with("write it as 2026-05-02T14:41:07-05:00"));
    let short = Entry::from_json("{\"id\":3}").unwrap_err().to_string();
    assert!(
        short.starts_with("this is no entry: the field id: "),
        "{short}"
    );
    let none = Entry::from_json("{}").unwrap_err().to_string();
    assert_eq!(
        none,
        "this is no entry: the field id is missing: send it as it was booked"
    );
}

fn chimney(saddle: Option<SaddleObserved>) -> Kind {
    Kind::Penetration(PenetrationAdded {
        item: ItemKind::Chimney,
        number: 1,
        leg: 4,
        saddle,
    })
}

fn size_reading(text: &str) -> Kind {
    Kind::Reading(Reading {
        thing: Thing::Size {
            item: ItemKind::Pipe,
            number: 1,
            size: SizeOf::Across,
        },
        text: text.into(),
        tape: TapeMarks::FeetInches,
        how: HowRead::Taped,
        followed: Followed::EaveEdge,
        blind: false,
    })
}

/// Layers counted at one edge, a rate changed, a chimney: struck, each stands no more and stays
/// readable; taken back, it stands again.
#[test]
fn what_was_seen_on_the_roof_is_struck_and_stands_again_like_a_reading() {
    let mut phone = Device::new(1);
    let layers = phone.book(
        &Kind::Covering(CoveringObserved {
            layers: Some(2),
            kind: None,
            leg: Some(3),
        }),
        &[],
    );
    phone.book(&chimney(None), &[]);
    let price = |value: &str| {
        Kind::Rate(RateSet {
            key: "field.price".into(),
            value: value.into(),
        })
    };
    let first = phone.book(&price("36.00"), &[]);
    phone.book(&price("38.00"), &[first]);
    let strike_of_layers = phone.book(&strike("another house"), &[layers]);
    let told = phone.told();
    let struck = told.coverings[0].struck.as_ref().map(|struck| struck.how);
    assert_eq!(struck, Some(TakenOut::Strike));
    assert_eq!(on_roof::covering(&told), None);
    assert_eq!(on_roof::items(&told).len(), 1);
    assert_eq!(
        on_roof::rates(&told).collect::<Vec<_>>(),
        [("field.price", "38.00")]
    );
    let story = told.story(&Subject::Rate("field.price".into()));
    assert_eq!(story.len(), 2);
    phone.book(&Kind::Undo(Undo {}), &[strike_of_layers]);
    let layers = on_roof::covering(&phone.told()).and_then(|covering| covering.layers);
    assert_eq!(layers, Some(2));
}

#[test]
fn every_kind_reads_back_as_it_was_written() {
    let thing = Thing::Tie { from: 1, to: 3 };
    let kinds = [
        Kind::JobStarted(JobStarted {
            address: "12 Invented Lane".into(),
            pretend: true,
        }),
        reading(4, "42 ft 7 1/2 in"),
        Kind::ReadBackRight(About {
            entry: Uuid::from_u128(5),
        }),
        Kind::SettledAtDesk(SettledAtDesk {
            entries: vec![Uuid::from_u128(5), Uuid::from_u128(6)],
        }),
        corner(3, Turn::Angled { degrees: 44.7 }),
        Kind::CannotGet(CannotGet {
            thing: thing.clone(),
            reason: None,
        }),
        Kind::LegEnd(LegEnd {
            leg: 2,
            end: EndKind::Gable,
        }),
        Kind::Pitch(PitchBooked {
            leg: 2,
            read: PitchRead::Number { in_12: 0.1 + 0.2 },
        }),
        Kind::Pitch(PitchBooked {
            leg: 2,
            read: PitchRead::Phone {
                degrees: 26.57,
                reversed: true,
            },
        }),
        Kind::Photo(PhotoTaken {
            sha256: "ab".repeat(32),
            size: 5,
            media: "image/jpeg".into(),
            of: Some(thing),
            from: PhotoFrom::Camera,
            heading: None,
            tilt: None,
            place: None,
            distance: None,
        }),
        chimney(Some(SaddleObserved::NotSeen)),
        Kind::Covering(CoveringObserved {
            layers: Some(2),
            kind: Some("wood shake".into()),
            leg: Some(3),
        }),
        Kind::Deck(DeckObserved {
            kind: DeckKind::Plank,
            leg: None,
        }),
        Kind::Visit(VisitNote::Front {
            heading: Some(212.5),
        }),
        Kind::Visit(VisitNote::Permission {
            what: Permission::LiftEdge,
            given: true,
            by: Some("the owner".into()),
        }),
        Kind::Visit(VisitNote::Left { reason: None }),
        Kind::Change(ChangeFound {
            number: 1,
            leg: 3,
            sheets: 3,
            each: Some("58.00".into()),
            consent: true,
            by: Some("the owner".into()),
        }),
        Kind::Rate(RateSet {
            key: "boots.pipe.1.5".into(),
            value: String::new(),
        }),
        strike("why"),
        Kind::Undo(Undo {}),
        Kind::Redo(Redo {}),
        frozen(),
    ];
    for kind in kinds {
        assert_eq!(
            Kind::parse(kind.name(), &kind.body()).as_ref(),
            Some(&kind),
            "{}",
            kind.name()
        );
    }
    assert_eq!(Kind::parse("reading", "null"), None);
    assert_eq!(Kind::parse("", "{}"), None);
}

fn frozen() -> Kind {
    Kind::PacketFrozen(PacketFrozen {
        packet: "ab".into(),
        edition: Edition::Owner,
        version: 2,
        before: Some("cd".into()),
        moment: "2026-05-02T14:41:07-05:00".into(),
        reader: None,
        entries: FrozenEntries {
            count: 7,
            digest: "ef".into(),
            up_to: vec![LastOf {
                device: Uuid::nil(),
                incarnation: Uuid::nil(),
                dseq: 8,
            }],
        },
        made_with: "eavebook 0.1.0".into(),
    })
}

/// The text of a body is what every later version must still read: it does not drift.
#[test]
fn a_body_is_written_in_these_words() {
    let thing = Thing::Tie { from: 1, to: 3 };
    let pitch = |read| Kind::Pitch(PitchBooked { leg: 2, read });
    let told = [
        (
            Kind::JobStarted(JobStarted {
                address: "12 Elm".into(),
                pretend: true,
            }),
            r#"{"address":"12 Elm","pretend":true}"#,
        ),
        (
            reading(4, "42 ft 7 1/2 in"),
            r#"{"thing":"leg","leg":4,"text":"42 ft 7 1/2 in","tape":"feet_inches","how":"taped","followed":"eave_edge","blind":false}"#,
        ),
        (
            Kind::ReadBackRight(About { entry: Uuid::nil() }),
            r#"{"entry":"00000000-0000-0000-0000-000000000000"}"#,
        ),
        (
            Kind::SettledAtDesk(SettledAtDesk {
                entries: vec![Uuid::nil()],
            }),
            r#"{"entries":["00000000-0000-0000-0000-000000000000"]}"#,
        ),
        (
            corner(1, Turn::Angled { degrees: 45.0 }),
            r#"{"after_leg":1,"turn":{"turn":"angled","degrees":45.0},"building_on":"right"}"#,
        ),
        (
            Kind::CannotGet(CannotGet {
                thing: thing.clone(),
                reason: None,
            }),
            r#"{"thing":"tie","from":1,"to":3,"reason":null}"#,
        ),
        (
            Kind::LegEnd(LegEnd {
                leg: 2,
                end: EndKind::Gable,
            }),
            r#"{"leg":2,"end":"gable"}"#,
        ),
        (
            pitch(PitchRead::SameAs { leg: 3 }),
            r#"{"leg":2,"read":{"by":"same_as","leg":3}}"#,
        ),
        (
            pitch(PitchRead::Phone {
                degrees: 26.5,
                reversed: true,
            }),
            r#"{"leg":2,"read":{"by":"phone","degrees":26.5,"reversed":true}}"#,
        ),
        (
            chimney(None),
            r#"{"item":"chimney","number":1,"leg":4,"saddle":null}"#,
        ),
        (
            Kind::Covering(CoveringObserved {
                layers: Some(2),
                kind: None,
                leg: Some(3),
            }),
            r#"{"layers":2,"kind":null,"leg":3}"#,
        ),
        (
            Kind::Deck(DeckObserved {
                kind: DeckKind::Plank,
                leg: None,
            }),
            r#"{"kind":"plank","leg":null}"#,
        ),
        (
            Kind::Rate(RateSet {
                key: "field.price".into(),
                value: "36.00".into(),
            }),
            r#"{"key":"field.price","value":"36.00"}"#,
        ),
        (
            size_reading("3 in"),
            r#"{"thing":"size","item":"pipe","number":1,"size":"across","text":"3 in","tape":"feet_inches","how":"taped","followed":"eave_edge","blind":false}"#,
        ),
        (strike("why"), r#"{"reason":"why"}"#),
        (Kind::Redo(Redo {}), "{}"),
        (
            frozen(),
            r#"{"packet":"ab","edition":"owner","version":2,"before":"cd","moment":"2026-05-02T14:41:07-05:00","reader":null,"entries":{"count":7,"digest":"ef","up_to":[{"device":"00000000-0000-0000-0000-000000000000","incarnation":"00000000-0000-0000-0000-000000000000","dseq":8}]},"made_with":"eavebook 0.1.0"}"#,
        ),
    ];
    for (kind, text) in told {
        assert_eq!(kind.body(), text);
        assert_eq!(Kind::parse(kind.name(), text), Some(kind));
    }
}

/// One thing that somebody does in a random book.
#[derive(Clone, Debug)]
enum Does {
    Reads(u32),
    Strikes(prop::sample::Index),
    Corners(u32),
    Undoes,
    Redoes,
}

fn does() -> impl Strategy<Value = Does> {
    prop_oneof![
        4 => (1u32..6).prop_map(Does::Reads),
        2 => any::<prop::sample::Index>().prop_map(Does::Strikes),
        2 => (1u32..4).prop_map(Does::Corners),
        3 => Just(Does::Undoes),
        2 => Just(Does::Redoes),
    ]
}

fn carry_out(phone: &mut Device, does: &Does) -> Option<Uuid> {
    match does {
        Does::Reads(leg) => Some(phone.reads(*leg, "20 ft")),
        Does::Strikes(which) => {
            let standing = standing(&phone.told()).0;
            (!standing.is_empty()).then(|| phone.book(&strike("no"), &[*which.get(&standing)]))
        }
        Does::Corners(leg) => {
            let earlier = phone.told().replaced_by_new(&Subject::CornerAfter(*leg));
            Some(phone.book(&corner(*leg, Turn::Outside), &earlier))
        }
        Does::Undoes => phone.undoes(),
        Does::Redoes => phone.redoes(),
    }
}

/// What stands: the readings and corners in force, by entry.
fn standing(told: &FieldBook) -> (Vec<Uuid>, Vec<Uuid>) {
    let readings = told
        .readings
        .iter()
        .filter(|r| r.struck.is_none())
        .map(|r| r.entry)
        .collect();
    (readings, told.corners.iter().map(|c| c.0).collect())
}

proptest! {
    #[test]
    fn fold_ignores_order_and_repeats(
        acts in prop::collection::vec(does(), 1..25),
        shuffle in prop::collection::vec(any::<prop::sample::Index>(), 40),
    ) {
        let mut phone = Device::new(1);
        for act in &acts {
            carry_out(&mut phone, act);
        }
        let once = phone.told();
        let mut mixed = phone.booked.clone();
        for pick in &shuffle {
            if !mixed.is_empty() {
                let at = pick.index(mixed.len());
                let entry = mixed.remove(at);
                mixed.push(entry.clone());
                if at.is_multiple_of(3) {
                    mixed.insert(0, entry);
                }
            }
        }
        prop_assert_eq!(once, fold(&mixed));
    }

    /// Against a plain stack of states: after any history, undo goes back to what stood before
    /// the step, and redo to what stood after it.
    #[test]
    fn undo_and_redo_walk_a_stack_of_what_stood(acts in prop::collection::vec(does(), 1..30)) {
        let mut phone = Device::new(1);
        let mut past = vec![standing(&phone.told())];
        let mut future: Vec<(Vec<Uuid>, Vec<Uuid>)> = Vec::new();
        for act in &acts {
            let did = carry_out(&mut phone, act);
            match act {
                Does::Undoes => {
                    prop_assert_eq!(did.is_some(), past.len() > 1);
                    if did.is_some() {
                        future.extend(past.pop());
                    }
                }
                Does::Redoes => {
                    prop_assert_eq!(did.is_some(), !future.is_empty());
                    past.extend(future.pop());
                }
                Does::Reads(_) | Does::Strikes(_) | Does::Corners(_) => {
                    if did.is_some() {
                        past.push(standing(&phone.told()));
                        future.clear();
                    }
                }
            }
            prop_assert_eq!(&standing(&phone.told()), past.last().unwrap());
        }
    }

    #[test]
    fn an_entry_goes_through_json_byte_for_byte(
        body in any::<String>(),
        author in any::<String>(),
    ) {
        let mut phone = Device::new(1);
        phone.reads(1, "42 ft");
        let mut entry = phone.booked[0].clone();
        entry.sha256 = sha256_hex(body.as_bytes());
        (entry.body, entry.author) = (body, author);
        prop_assert_eq!(Entry::from_json(&entry.to_json()).unwrap(), entry);
    }

    #[test]
    fn no_text_makes_reading_an_entry_or_a_body_fall_over(text in any::<String>()) {
        prop_assert!(Entry::from_json(&text).is_err());
        prop_assert_eq!(Kind::parse(&text, &text), None);
    }
}

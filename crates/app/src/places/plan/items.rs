//! Items as list items: what stands out of the roof, what lies on it, what it is nailed to, how
//! high its eaves lie. What nobody looked at stands there too and says so.

use crate::names;
use crate::parts::comparison::of_ridge;
use crate::parts::noted::{On, told};
use crate::parts::reply::{AskView, ChoiceView, Figure, SizeView, StoryView, ThingView};
use crate::parts::solved_job::SolvedJob;
use crate::parts::{job_rates, roof, things};
use crate::places::plan::reply::ItemView;
use crate::places::plan::request::PlanRequest;
use eavebook_core::book::agree::in_dispute;
use eavebook_core::book::fold::Noted;
use eavebook_core::book::kinds::{
    DeckKind, DeckSizeOf, ItemKind, PenetrationAdded, SaddleObserved, SizeOf, Thing,
};
use eavebook_core::check::State;
use uuid::Uuid;

/// Every item: those that stand out of the roof in the order in which they were booked, then the
/// covering, the deck and the height of the eaves.
#[must_use]
pub fn view(seen: &SolvedJob, job: Uuid) -> Vec<ItemView> {
    let mut items: Vec<ItemView> = noted(seen)
        .into_iter()
        .map(|noted| one(seen, job, noted))
        .collect();
    if seen.is_shut() || !items.is_empty() {
        items.push(layers(seen, job));
        items.push(deck(seen, job));
        items.push(eave_height(seen));
        items.extend(ridge_height(seen));
    }
    items
}

/// Each thing that was ever noted, once: as it stands, else as it was last struck.
fn noted<'a>(seen: &SolvedJob<'a>) -> Vec<&'a Noted<PenetrationAdded>> {
    let mut items: Vec<&Noted<PenetrationAdded>> = Vec::new();
    for noted in &seen.book.penetrations {
        let same = |there: &&mut &Noted<PenetrationAdded>| there.what.thing() == noted.what.thing();
        match items.iter_mut().find(same) {
            Some(there) if noted.struck.is_none() || there.struck.is_some() => *there = noted,
            Some(_) => {}
            None => items.push(noted),
        }
    }
    items
}

fn one(seen: &SolvedJob, job: Uuid, noted: &Noted<PenetrationAdded>) -> ItemView {
    let PenetrationAdded { item, number, .. } = noted.what;
    let thing = noted.what.thing();
    let sizes: Vec<Thing> = item
        .sizes()
        .iter()
        .map(|size| Thing::Size {
            item,
            number,
            size: *size,
        })
        .collect();
    let state = if noted.struck.is_some() {
        State::Struck
    } else {
        seen.state_of_sizes(&sizes)
    };
    let mut asks = Vec::new();
    if item == ItemKind::Chimney {
        asks.push(saddle(job, number, noted.what.saddle));
    }
    item_view(
        seen,
        &Shown {
            thing,
            sizes,
            state,
            value: None,
            about: about(seen, noted),
            told: told_of_item(seen, &noted.what.thing()),
            asks,
        },
    )
}

/// An item before it is put into words.
struct Shown {
    thing: Thing,
    sizes: Vec<Thing>,
    state: State,
    /// What was seen of it, in words; its sizes follow.
    value: Option<String>,
    about: String,
    /// What was seen of it, the newest first: sizes are added.
    told: Vec<StoryView>,
    asks: Vec<AskView>,
}

fn item_view(seen: &SolvedJob, shown: &Shown) -> ItemView {
    let sizes: Vec<SizeView> = shown
        .sizes
        .iter()
        .map(|size| size_view(seen, size))
        .collect();
    let mut story: Vec<StoryView> = Vec::new();
    for size in &shown.sizes {
        let word = size_word(size);
        let told = things::story(seen, size, seen.state(size)).into_iter();
        story.extend(told.map(|told| StoryView {
            about: format!("{word}, {}", told.about),
            ..told
        }));
    }
    story.extend(shown.told.iter().cloned());
    let standing = story.iter().filter(|told| told.may_strike);
    let state = seen.at_desk(shown.state, standing.map(|told| told.entry));
    let unread = shown
        .sizes
        .iter()
        .find(|size| seen.in_force(size).is_empty());
    ItemView {
        item: ThingView {
            thing: names::name(&shown.thing),
            read: unread.or(shown.sizes.first()).cloned(),
            title: names::capital(&names::name(&shown.thing)),
            state,
            state_word: state.word().to_owned(),
            value: value(shown.value.as_deref(), &sizes),
            about: shown.about.clone(),
            story,
            photos: things::photos(seen, &shown.thing),
        },
        sizes,
        asks: shown.asks.clone(),
    }
}

/// One size that is asked of something, as far as it is read.
#[must_use]
pub fn size_view(seen: &SolvedJob, thing: &Thing) -> SizeView {
    let hidden = seen.hides(thing);
    SizeView {
        thing: thing.clone(),
        name: size_word(thing).to_owned(),
        state: seen.state(thing),
        value: things::value(seen, thing).filter(|_| !hidden),
    }
}

fn size_word(thing: &Thing) -> &'static str {
    match thing {
        Thing::Size { size, .. } => size.word(),
        Thing::DeckSize { size } => size.word(),
        Thing::Overhang { .. } => "overhang",
        Thing::EaveHeight | Thing::RidgeHeight => "height",
        Thing::Leg { .. }
        | Thing::Tie { .. }
        | Thing::Item { .. }
        | Thing::Slope { .. }
        | Thing::Deck
        | Thing::Layers
        | Thing::Change { .. } => "length",
    }
}

/// What was seen, then the sizes in their order: `plank, gap 1/4 in`; one size alone goes without
/// its word.
fn value(said: Option<&str>, sizes: &[SizeView]) -> Option<Figure> {
    let read = sizes.iter().filter_map(|size| {
        let value = size.value.as_ref()?;
        Some(if sizes.len() == 1 && said.is_none() {
            value.words.clone()
        } else {
            format!("{} {}", size.name, value.words)
        })
    });
    let parts: Vec<String> = said.map(str::to_owned).into_iter().chain(read).collect();
    (!parts.is_empty()).then(|| Figure {
        words: parts.join(", "),
        give_or_take: None,
    })
}

fn about(seen: &SolvedJob, noted: &Noted<PenetrationAdded>) -> String {
    let PenetrationAdded {
        item, leg, saddle, ..
    } = noted.what;
    let face = roof::face_names(seen);
    let name = (leg as usize).checked_sub(1).and_then(|at| face.get(at));
    let mut parts = vec![match name {
        Some(name) => format!("on {name}, the face of leg {leg}"),
        None => format!("on the face of leg {leg}"),
    }];
    parts.extend(saddle.map(|seen| names::saddle(seen).to_owned()));
    let others = seen.book.penetrations.iter().filter(|other| {
        other.struck.is_none()
            && (other.what.item, other.what.leg) == (item, leg)
            && other.what.number != noted.what.number
    });
    if noted.struck.is_none() && others.count() > 0 {
        parts.push(format!(
            "another {} stands on this face: if it is the same one, strike one",
            item.word()
        ));
    }
    parts.extend(item.sizes().iter().map(|size| how_read(seen, noted, *size)));
    parts.extend(noted.struck.as_ref().map(things::struck));
    parts.join(", ")
}

/// "size taped", "height not read".
fn how_read(seen: &SolvedJob, noted: &Noted<PenetrationAdded>, size: SizeOf) -> String {
    let thing = Thing::Size {
        item: noted.what.item,
        number: noted.what.number,
        size,
    };
    match seen.in_force(&thing).last() {
        Some(read) => {
            let how = names::how(&thing, read.how, read.followed);
            format!("{} {how}", size.word())
        }
        None => format!("{} not read", size.word()),
    }
}

fn told_of_item(seen: &SolvedJob, thing: &Thing) -> Vec<StoryView> {
    let noted = seen.book.penetrations.iter().rev();
    let noted = noted.filter(|noted| noted.what.thing() == *thing);
    noted
        .map(|noted| {
            let saddle = noted.what.saddle.map(names::saddle);
            let place = format!("noted on the face of leg {}", noted.what.leg);
            told(
                seen,
                &On::new(noted),
                saddle.unwrap_or("seen").to_owned(),
                place,
            )
        })
        .collect()
}

fn saddle(job: Uuid, number: u32, now: Option<SaddleObserved>) -> AskView {
    let choice = |name: &str, saddle| ChoiceView {
        name: name.to_owned(),
        chosen: now == Some(saddle),
        says: PlanRequest::Saddle {
            job,
            number,
            seen: saddle,
        }
        .into(),
        opens: None,
    };
    AskView {
        title: "A saddle behind it?".to_owned(),
        choices: vec![
            choice("Yes", SaddleObserved::Yes),
            choice("No", SaddleObserved::No),
            choice("Not seen", SaddleObserved::NotSeen),
        ],
    }
}

/// State of what was seen at one place or more: no size, so two places that say the same agree.
fn seen_at<T: PartialEq>(seen: &SolvedJob, thing: &Thing, said: &[T]) -> State {
    match said {
        [] => State::NotLooked,
        [_] => State::ReadOnce,
        [first, rest @ ..] if rest.iter().all(|other| other == first) => {
            if seen.has_photo(thing) {
                State::Proved
            } else {
                State::Agreed
            }
        }
        _ => State::Suspect,
    }
}

fn at(leg: Option<u32>) -> String {
    match leg {
        Some(leg) => format!("seen at leg {leg}"),
        None => "seen, the place not named".to_owned(),
    }
}

fn layers(seen: &SolvedJob, job: Uuid) -> ItemView {
    let standing = seen.book.coverings.iter();
    let standing: Vec<_> = standing.filter(|noted| noted.struck.is_none()).collect();
    let counts: Vec<u32> = standing
        .iter()
        .filter_map(|noted| noted.what.layers)
        .collect();
    let kind = standing
        .iter()
        .rev()
        .find_map(|noted| noted.what.kind.as_deref());
    let most = counts.iter().max().map(|most| count_of_layers(*most));
    let said: Vec<String> = most.into_iter().chain(kind.map(str::to_owned)).collect();
    let places = counts.len();
    let about = match (places, counts.iter().min() == counts.iter().max()) {
        (0, _) => "nobody counted the layers: lift an edge where it will seal again".to_owned(),
        (1, _) => "seen at one place: one edge does not prove the whole roof".to_owned(),
        (many, true) => format!("seen at {many} places, which agree"),
        (many, false) => format!("seen at {many} places, which differ: the most is weighed"),
    };
    let told = seen.book.coverings.iter().rev().map(|noted| {
        let what = [
            noted.what.layers.map(count_of_layers),
            noted.what.kind.clone(),
        ];
        let value = what.into_iter().flatten().collect::<Vec<_>>().join(", ");
        told(seen, &On::new(noted), value, at(noted.what.leg))
    });
    item_view(
        seen,
        &Shown {
            thing: Thing::Layers,
            sizes: Vec::new(),
            state: seen_at(seen, &Thing::Layers, &counts),
            value: (!said.is_empty()).then(|| said.join(", ")),
            about,
            told: told.collect(),
            asks: vec![ask_layers(seen, job, None), ask_covering(job, kind)],
        },
    )
}

fn count_of_layers(layers: u32) -> String {
    match layers {
        1 => "1 layer".to_owned(),
        many => format!("{many} layers"),
    }
}

/// How many layers are seen at the edge of a leg, or at no place named.
#[must_use]
pub fn ask_layers(seen: &SolvedJob, job: Uuid, leg: Option<u32>) -> AskView {
    let standing = seen.book.coverings.iter();
    let mut here = standing.filter(|noted| noted.struck.is_none() && noted.what.leg == leg);
    let now = here.next_back().and_then(|noted| noted.what.layers);
    let choice = |layers: u32| ChoiceView {
        name: count_of_layers(layers),
        chosen: now == Some(layers),
        says: PlanRequest::Layers {
            job,
            layers: Some(layers),
            kind: None,
            leg,
        }
        .into(),
        opens: None,
    };
    AskView {
        title: match leg {
            Some(_) => "Layers at this edge".to_owned(),
            None => "Layers, the place not named".to_owned(),
        },
        choices: (1..=3).map(choice).collect(),
    }
}

/// What lies there, in the words of the firm's rates.
fn ask_covering(job: Uuid, now: Option<&str>) -> AskView {
    let choices = job_rates::coverings().map(|kind| ChoiceView {
        name: names::capital(kind),
        chosen: now == Some(kind),
        says: PlanRequest::Layers {
            job,
            layers: None,
            kind: Some(kind.to_owned()),
            leg: None,
        }
        .into(),
        opens: None,
    });
    AskView {
        title: "What lies there".to_owned(),
        choices: choices.collect(),
    }
}

/// What the deck is, as seen at the edge of a leg, or at no place named.
#[must_use]
pub fn ask_deck(seen: &SolvedJob, job: Uuid, leg: Option<u32>) -> AskView {
    let standing = seen.book.decks.iter();
    let mut here = standing.filter(|noted| noted.struck.is_none() && noted.what.leg == leg);
    let now = here.next_back().map(|noted| noted.what.kind);
    let choice = |kind: DeckKind| ChoiceView {
        name: names::capital(kind.word()),
        chosen: now == Some(kind),
        says: PlanRequest::Deck { job, kind, leg }.into(),
        opens: None,
    };
    AskView {
        title: match leg {
            Some(_) => "Deck at this edge".to_owned(),
            None => "Deck, the place not named".to_owned(),
        },
        choices: vec![choice(DeckKind::Plank), choice(DeckKind::Sheet)],
    }
}

fn deck(seen: &SolvedJob, job: Uuid) -> ItemView {
    let standing = seen.book.decks.iter();
    let standing: Vec<_> = standing.filter(|noted| noted.struck.is_none()).collect();
    let kinds: Vec<DeckKind> = standing.iter().map(|noted| noted.what.kind).collect();
    let planks = kinds.contains(&DeckKind::Plank);
    let sizes = if planks {
        vec![
            DeckSizeOf::Gap,
            DeckSizeOf::PlankWidth,
            DeckSizeOf::Thickness,
        ]
    } else if kinds.is_empty() {
        Vec::new()
    } else {
        vec![DeckSizeOf::Thickness]
    };
    let sizes: Vec<Thing> = sizes
        .into_iter()
        .map(|size| Thing::DeckSize { size })
        .collect();
    let disputed = sizes.iter().any(|size| in_dispute(&seen.in_force(size)));
    let kind = match (planks, kinds.last()) {
        (true, _) => Some("plank".to_owned()),
        (false, kind) => kind.map(|kind| kind.word().to_owned()),
    };
    let about = match kinds.len() {
        0 => "nobody saw it: it is priced as an allowance".to_owned(),
        1 => "seen at one place: one edge does not prove the whole deck".to_owned(),
        many => format!("seen at {many} places"),
    };
    let told = seen.book.decks.iter().rev().map(|noted| {
        let value = noted.what.kind.word().to_owned();
        told(seen, &On::new(noted), value, at(noted.what.leg))
    });
    item_view(
        seen,
        &Shown {
            thing: Thing::Deck,
            sizes,
            state: if disputed {
                State::Suspect
            } else {
                seen_at(seen, &Thing::Deck, &kinds)
            },
            value: kind,
            about,
            told: told.collect(),
            asks: vec![ask_deck(seen, job, None)],
        },
    )
}

/// One height, which is its own only size.
fn height(seen: &SolvedJob, thing: Thing, about: String) -> ItemView {
    item_view(
        seen,
        &Shown {
            state: seen.state(&thing),
            sizes: vec![thing.clone()],
            thing,
            value: None,
            about,
            told: Vec::new(),
            asks: Vec::new(),
        },
    )
}

fn eave_height(seen: &SolvedJob) -> ItemView {
    let thing = Thing::EaveHeight;
    let about = match seen.in_force(&thing).len() {
        0 => "nobody read how high the eaves lie: work is priced as from the ground".to_owned(),
        count => names::times(count),
    };
    height(seen, thing, about)
}

/// The ridge as it was seen over the eaves; not there until somebody read it, since no roof needs
/// it.
fn ridge_height(seen: &SolvedJob) -> Option<ItemView> {
    let thing = Thing::RidgeHeight;
    let mut ever = seen.book.readings.iter();
    ever.find(|read| read.thing == thing)?;
    let judged = of_ridge(seen).map(|said| said.en);
    let about = match (judged, seen.in_force(&thing).len()) {
        (Some(judged), _) if !seen.hides(&thing) => judged,
        (_, 0) => "no reading of it stands".to_owned(),
        (_, count) => names::times(count),
    };
    Some(height(seen, thing, about))
}

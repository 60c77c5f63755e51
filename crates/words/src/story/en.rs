use super::StoryMessage;
use crate::{En, Format};
use chrono::{DateTime, FixedOffset};
use eavebook_core::book::fold::TakenOut;
use eavebook_core::book::kinds::{Followed, HowRead, Thing};

pub(super) fn text(message: &StoryMessage, f: &En) -> String {
    match message {
        StoryMessage::ReadingOutOfForce { thing, reading, read_at, how, struck_at, reason } => { let reason = reason.as_ref().map_or_else(|| "no reason given".to_owned(), |reason| format!("reason \"{}\"", reason.0)); format!("{}, {}, read{}: {}{}, {reason}.", f.thing_first(thing), f.reading(reading), at(read_at.as_ref(), f), taken_out(*how), at(struck_at.as_ref(), f)) },
        StoryMessage::PitchInTwelve { rise } => format!("{} in 12", f.number(*rise, 3)),
        StoryMessage::PitchRiseInRun { rise, run } => format!("{} in rise in {} in run", f.number(*rise, 3), f.number(*run, 3)),
        StoryMessage::PitchSameAs { leg } => format!("Same as {}", f.leg(*leg)),
        StoryMessage::HowRead { how, followed } => format!("{}{}", how_read(*how), along(*followed)),
        StoryMessage::WorkedOut => "Worked out from the other legs".to_owned(),
        StoryMessage::OneUncheckedReading => "1 reading, nothing checks it".to_owned(),
        StoryMessage::Readings { count } => f.count(*count),
        StoryMessage::LeastSquares => "The lengths are adjusted by least squares, each reading by its own ±. The smallest mistake that would show is after Baarda 1968.".to_owned(),
        StoryMessage::Disagree { things } => format!("The readings disagree about {}. Nothing was corrected: the figures use all readings as recorded.", thing_list(things, f)),
        StoryMessage::AreaFormula { footprint, area } => format!("The area of a face is its footprint times the square root of 1 + (rise / 12)², and the roof is the sum of its faces: footprint {}, area {}. The ± includes that of every corner and every pitch.", f.area(*footprint), f.area_figure(*area)),
        StoryMessage::ChangedSince { version } => format!("Changed since version {version}"),
    }
}

fn at(time: Option<&DateTime<FixedOffset>>, f: &En) -> String {
    time.map_or_else(String::new, |time| format!(" {}", f.day_and_time(time)))
}

fn taken_out(how: TakenOut) -> &'static str {
    match how {
        TakenOut::Strike => "struck",
        TakenOut::Undo => "taken back",
        TakenOut::Replaced => "replaced",
    }
}

fn how_read(how: HowRead) -> &'static str {
    match how {
        HowRead::Taped => "Taped",
        HowRead::Paced => "Paced",
        HowRead::OffPhoto => "Read off a photo",
        HowRead::Told => "Reported, not read",
    }
}

fn along(followed: Option<Followed>) -> &'static str {
    match followed {
        None => "",
        Some(Followed::EaveEdge) => " along the eave edge",
        Some(Followed::GutterFace) => " along the gutter face",
        Some(Followed::Wall) => " along the wall",
    }
}

fn thing_list(things: &[Thing], f: &En) -> String {
    let names: Vec<String> = things.iter().map(|thing| f.thing(thing)).collect();
    f.and(&names)
}

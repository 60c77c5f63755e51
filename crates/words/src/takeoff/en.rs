use super::TakeoffMessage;
use crate::{En, Format};

pub(super) fn text(message: &TakeoffMessage, f: &En) -> String {
    match message {
        TakeoffMessage::DemoRates => "These are the demo rates of this program: every figure is invented. Enter your own before anyone sees a price.".to_owned(),
        TakeoffMessage::DemoCode => "These are the demo code notes of this program. Ask the permit office which text is in force, and write down what it requires.".to_owned(),
        TakeoffMessage::OverhangNotGiven { building, leg } => format!("The overhang of {} of {} was not measured. The ice and water barrier there is counted with the overhang of the rates. Measure it.", f.leg(*leg), f.quoted(building)),
        TakeoffMessage::LayersNotGiven => "Nobody counted the layers. Weight, loads and hours of the tear-off cover every number of layers that is likely. Lift an edge and count them.".to_owned(),
        TakeoffMessage::Loads => "Weights are estimates. Take the payload of the trailer from a scale, never from its plate. Stacked bundles load the roof in one place. Whether it can bear them must be checked by a qualified person; this program does not do that.".to_owned(),
        TakeoffMessage::CodeDateOld { read, on, age } => {
            let age: Vec<String> = age.iter().map(|count| f.count(*count)).collect();
            format!("The code notes were read on {}, {} before {}. Ask the permit office which text is in force, and check the prices too.", f.date(*read), f.and(&age), f.date(*on))
        }
        TakeoffMessage::CodeDateLater { read, on } => format!("The code notes were read on {}, after {}. Check which text was in force on that day.", f.date(*read), f.date(*on)),
        TakeoffMessage::TooFlat { building, leg } => format!("The face over {} of {} is too flat for shingles by the code notes. Its covering is not counted. Ask what goes there.", f.leg(*leg), f.quoted(building)),
        TakeoffMessage::TooLarge => "The roof is over 1,000,000,000 sq ft. Check the lengths of its legs.".to_owned(),
        TakeoffMessage::TooManyCourses { leg } => format!("The face over {} takes too many courses to count. Enter a wider exposure in the rates, or check the lengths of the legs.", f.leg(*leg)),
    }
}

use super::OrderMessage;
use crate::{En, Format};

pub(super) fn text(message: &OrderMessage, f: &En) -> String {
    match message {
        OrderMessage::NeededAndSpare => "Needed is what the roof takes. Spare is what is left of full bundles, lengths, rolls and sheets. What stays unopened is returned.".to_owned(),
        OrderMessage::NoQuantities => "No quantities yet: they need a closed outline and a pitch for every face. See the list of what is not known.".to_owned(),
        OrderMessage::TearOff { pounds, low_pounds, high_pounds, loads, low_loads, high_loads, plan_for } => format!("The tear-off weighs about {} lb, 8 times in 10 between {} and {} lb: that is {} of a full load, 8 times in 10 between {} and {}. Plan for {}. Weigh the first load: the hauler's limit decides.", f.number(*pounds, 0), f.number(*low_pounds, 0), f.number(*high_pounds, 0), f.number(*loads, 1), f.number(*low_loads, 1), f.number(*high_loads, 1), f.count(*plan_for)),
    }
}

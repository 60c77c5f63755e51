use super::SafetyMessage;
use crate::En;

pub(super) fn text(message: &SafetyMessage, _: &En) -> String {
    match message {
        SafetyMessage::Climbing => "Fall protection rules for roof work often begin at six feet and may be stricter here. Follow your local rule and your firm's plan. Not trained or not tied off: stay down.".to_owned(),
        SafetyMessage::Ice => "Ice, frost, snow or wet: stay off. Snow hides skylights, edges and weak deck.".to_owned(),
        SafetyMessage::Wires => "Treat every wire as live, also the one to the house. Ten feet is a common least distance, more for higher voltage. If you cannot keep it, call the utility first.".to_owned(),
        SafetyMessage::Structure => "Sagging, cracked or spongy framing, a heavier covering or stacked loads: must be checked by a qualified person; this paper does not do that.".to_owned(),
        SafetyMessage::LeadAndAsbestos => "House before 1978 or of unknown age: rules on lead paint may apply before painted parts are cut or scraped. Old felt, tile or siding may hold asbestos: do not break it to look, ask a licensed tester.".to_owned(),
        SafetyMessage::CodeNotes => "These are notes that someone read on the date shown. The permit office decides: check with the permit office.".to_owned(),
        SafetyMessage::PermitOffice => "The permit office decides what the building rules ask for here: check with it before the work begins.".to_owned(),
        SafetyMessage::Insurance => "This packet holds what was seen and measured. Cover and claim handling are for the insurer and, where the law says so, licensed people.".to_owned(),
    }
}

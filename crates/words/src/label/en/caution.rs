use crate::label::caution::CautionLabel;

pub(in crate::label) const fn text(label: CautionLabel) -> &'static str {
    match label {
        CautionLabel::C1Whole => {
            "Look before you lift the ladder: wires, ice, wind, soft ground. The ground-only survey is a full survey. Unknowns can be priced as unknowns."
        }
        CautionLabel::C1Line => {
            "Look before you lift the ladder. The ground-only survey is a full survey."
        }
        CautionLabel::C2Whole => {
            "Snow hides skylights, edges and weak deck. Stay off. Book what you can from the ground and come back."
        }
        CautionLabel::C2Line => "Ice, snow or wet: stay off.",
        CautionLabel::C3Whole => {
            "Treat every wire as live, also the one to the house. Keep yourself, ladder and tape well away: ten feet is a common least distance, more for higher voltage. If you cannot, ask the utility first."
        }
        CautionLabel::C3Line => "Treat every wire as live and keep well away.",
        CautionLabel::C4Whole => {
            "Fall protection rules for roof work often begin at six feet and may be stricter here. Follow your local rule and your firm's plan. If you are not trained or tied off, stay down."
        }
        CautionLabel::C4Line => "Not trained or not tied off: stay down.",
        CautionLabel::C5Whole => {
            "Firm footing, about one out for four up, tied or held, rails past the edge, three points of contact. Phone in pocket. Read it, photograph it, come down, then type."
        }
        CautionLabel::C5Line => "Ladder: firm, one out for four up, tied or held.",
        CautionLabel::C6Whole => {
            "Tell someone where you are and when you will call. This phone cannot send without signal."
        }
        CautionLabel::C6Line => "Alone: tell someone where you are and when you will call.",
        CautionLabel::C7Whole => {
            "House before 1978 or of unknown age: lead-safe work rules may apply where paint is cut or scraped. Check before pricing or disturbing paint. Old felt, tile or siding may hold asbestos: do not break it to look. Ask a licensed tester."
        }
        CautionLabel::C7Line => {
            "Old paint, felt, tile or siding: check the rules before disturbing it."
        }
        CautionLabel::C8Whole => {
            "Lift only with permission, only where it will seal again. Cold shingles crack. One edge does not prove the whole deck."
        }
        CautionLabel::C8Line => "Lift only where it will seal again.",
        CautionLabel::C9Whole => {
            "This packet says what was seen and measured. Cover and claim handling are for the insurer and, where the law says so, licensed people."
        }
        CautionLabel::C9Line => "Cover and claims are for the insurer and licensed people.",
        CautionLabel::C10Whole => {
            "Sagging, cracked or spongy framing, heavier roofing, or stacked loads must be checked by a qualified person; these measures do not do that."
        }
        CautionLabel::C10Line => {
            "Framing and loads must be checked by a qualified person; these measures do not do that."
        }
        CautionLabel::C11Whole => {
            "Notes someone read on the date shown. The permit office decides."
        }
        CautionLabel::C11Line => "The permit office decides.",
        CautionLabel::C12Whole => {
            "Makers commonly rate phones down to freezing point; below that they may stop without warning. Warm it against you. All keystrokes so far are kept."
        }
        CautionLabel::C12Line => {
            "A phone below freezing may stop without warning. All keystrokes so far are kept."
        }
    }
}

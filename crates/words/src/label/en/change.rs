use crate::label::change::ChangeLabel;

pub(in crate::label) const fn text(label: ChangeLabel) -> &'static str {
    match label {
        ChangeLabel::Changes => "Changes",
        ChangeLabel::NoChanges => {
            "No changes yet. Record here what tear-off finds before it is repaired."
        }
        ChangeLabel::AddChange => "Add change",
        ChangeLabel::Change => "Change",
        ChangeLabel::UnderWhichFace => "Under which face?",
        ChangeLabel::BadSheets => "Bad deck sheets",
        ChangeLabel::OneMore => "one more",
        ChangeLabel::OneLess => "one less",
        ChangeLabel::Consent => "Consent",
        ChangeLabel::ConsentAbout => "Somebody who can approve agreed to the count and the price.",
    }
}

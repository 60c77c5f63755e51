use crate::label::takeoff::TakeoffLabel;

pub(in crate::label) const fn text(label: TakeoffLabel) -> &'static str {
    match label {
        TakeoffLabel::WorkingOut => "Calculando…",
        TakeoffLabel::NothingYet => "Todavía no hay qué calcular",
        TakeoffLabel::NotKnown => "No se sabe",
        TakeoffLabel::NotPriced => "Sin precio",
        TakeoffLabel::Changed => "Cambiado para este trabajo",
        TakeoffLabel::HowWorkedOut => "Cómo se calculó",
        TakeoffLabel::Lines => "Renglones",
        TakeoffLabel::MadeOf => "Sale de",
        TakeoffLabel::CodeProfile => "Del perfil de código",
        TakeoffLabel::Rates => "Tarifas",
        TakeoffLabel::Blank => "en blanco",
        TakeoffLabel::OurRate => "nuestra tarifa",
        TakeoffLabel::Change => "Cambiar",
        TakeoffLabel::LeaveBlank => "Dejar en blanco",
        TakeoffLabel::BackToOurRate => "Volver a nuestra tarifa",
    }
}

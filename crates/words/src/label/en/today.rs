use crate::label::today::TodayLabel;

pub(in crate::label) const fn text(label: TodayLabel) -> &'static str {
    match label {
        TodayLabel::Stops => "Stops",
        TodayLabel::NoStops => "No stops. Start a job.",
        TodayLabel::Search => "Search",
        TodayLabel::Found => "Found",
        TodayLabel::NothingFound => "Nothing found. Try a street or a thing.",
        TodayLabel::StartAJob => "Start a job",
        TodayLabel::Address => "Address",
        TodayLabel::Start => "Start",
        TodayLabel::NoAddress => "Which address? Write the street.",
    }
}

use super::TakeoffMessage;
use crate::{Count, Noun, Quoted};
use eavebook_core::takeoff::{NoTakeoff, TakeoffCaution, whole_months};

impl From<&TakeoffCaution> for TakeoffMessage {
    fn from(caution: &TakeoffCaution) -> TakeoffMessage {
        match caution {
            TakeoffCaution::DemoRates => TakeoffMessage::DemoRates,
            TakeoffCaution::DemoCode => TakeoffMessage::DemoCode,
            TakeoffCaution::OverhangNotGiven { body, leg } => TakeoffMessage::OverhangNotGiven {
                building: Quoted::from(body.as_str()),
                leg: from_one(*leg),
            },
            TakeoffCaution::LayersNotGiven => TakeoffMessage::LayersNotGiven,
            TakeoffCaution::Loads => TakeoffMessage::Loads,
            TakeoffCaution::OldCode { read, on } => TakeoffMessage::CodeDateOld {
                read: *read,
                on: *on,
                age: age(whole_months(*read, *on)),
            },
            TakeoffCaution::CodeReadLater { read, on } => TakeoffMessage::CodeDateLater {
                read: *read,
                on: *on,
            },
            TakeoffCaution::TooFlat { body, leg } => TakeoffMessage::TooFlat {
                building: Quoted::from(body.as_str()),
                leg: from_one(*leg),
            },
        }
    }
}

impl From<&NoTakeoff> for TakeoffMessage {
    fn from(error: &NoTakeoff) -> TakeoffMessage {
        match error {
            NoTakeoff::TooLarge => TakeoffMessage::TooLarge,
            NoTakeoff::TooManyCourses { leg, .. } => TakeoffMessage::TooManyCourses {
                leg: from_one(*leg),
            },
        }
    }
}

/// The number of a leg in a sentence, from its index in the outline.
fn from_one(leg: usize) -> u32 {
    u32::try_from(leg).unwrap_or(u32::MAX).saturating_add(1)
}

/// Years and months; a unit with none of them is left out.
fn age(months: u32) -> Vec<Count> {
    let counts = [(months / 12, Noun::Year), (months % 12, Noun::Month)];
    let counts = counts.into_iter().filter(|(n, _)| *n > 0);
    counts
        .map(|(n, noun)| Count {
            n: u64::from(n),
            noun,
        })
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::Language;

    #[test]
    fn an_old_code_profile_names_its_age_in_both_languages() {
        let caution = TakeoffCaution::OldCode {
            read: "2024-05-01".parse().unwrap(),
            on: "2026-11-30".parse().unwrap(),
        };
        let message = TakeoffMessage::from(&caution);
        let [english, spanish] = Language::ALL.map(|language| message.text(language));
        assert!(english.contains("May 1, 2024, 2 years and 6 months before Nov 30, 2026"));
        assert!(spanish.contains("1 may 2024, 2 años y 6 meses antes del 30 nov 2026"));
    }

    #[test]
    fn legs_count_from_one_in_a_caution() {
        let caution = TakeoffCaution::TooFlat {
            body: "main".to_owned(),
            leg: 0,
        };
        let expected = TakeoffMessage::TooFlat {
            building: Quoted::from("main"),
            leg: 1,
        };
        assert_eq!(TakeoffMessage::from(&caution), expected);
    }
}

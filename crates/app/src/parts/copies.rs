//! Where copies of a job are, in words. Only what the hub has acknowledged counts as a copy there.

use crate::names;
use crate::sentence::{Sentence, sentence};
use eavebook_store::Copies;

/// "2 copies: this phone, hub". `of_hub`: what a person must know of the exchange.
#[must_use]
pub fn words(copies: Copies, hub_message: Option<&str>) -> Sentence {
    let (code, mut words) = match copies {
        Copies::HereOnly => ("copies_1", "1 copy: this phone only".to_owned()),
        Copies::WithHub {
            waiting,
            turned_back,
            to_come,
        } => {
            let (code, mut words) = if waiting > 0 {
                let words = format!("Waiting to send: {waiting}, on this phone only");
                ("copies_waiting", words)
            } else if turned_back > 0 {
                let words = format!("The hub did not take {turned_back}: on this phone only");
                ("copies_turned_back", words)
            } else {
                ("copies_2", "2 copies: this phone, hub".to_owned())
            };
            if to_come > 0 {
                let photos = if to_come == 1 { "photo" } else { "photos" };
                words.push_str(&format!(". {to_come} {photos} still to come here"));
            }
            (code, words)
        }
    };
    if let Some(why) = hub_message {
        words.push_str(". ");
        words.push_str(&names::capital(why));
    }
    sentence(code, words)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn with_hub(waiting: u64, turned_back: u64, to_come: u64) -> Copies {
        Copies::WithHub {
            waiting,
            turned_back,
            to_come,
        }
    }

    #[test]
    fn a_copy_is_one_that_was_acknowledged() {
        let said = |copies| words(copies, None).en;
        assert_eq!(said(Copies::HereOnly), "1 copy: this phone only");
        assert_eq!(said(with_hub(0, 0, 0)), "2 copies: this phone, hub");
        assert_eq!(
            said(with_hub(2, 0, 0)),
            "Waiting to send: 2, on this phone only"
        );
        assert_eq!(
            said(with_hub(0, 1, 1)),
            "The hub did not take 1: on this phone only. 1 photo still to come here"
        );
    }

    #[test]
    fn what_only_a_person_can_mend_is_said_with_it() {
        let said = words(with_hub(2, 0, 0), Some("pair again")).en;
        assert_eq!(said, "Waiting to send: 2, on this phone only. Pair again");
    }
}

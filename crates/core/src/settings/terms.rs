//! By which rates and which code profile a roof is taken off and priced.

use super::code::Code;
use super::rates::Rates;
use chrono::NaiveDate;

/// Rates or a code profile, with their origin.
#[derive(Clone, Debug, PartialEq)]
pub enum Chosen<T> {
    /// The pretend ones that come with the program. A caution names them.
    Demo(T),
    /// Those of a firm or of a file.
    Own(T),
}

/// Where rates or a code profile come from.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Origin {
    /// The program: every figure is invented.
    Demo,
    /// A firm or a file.
    Own,
}

impl<T> Chosen<T> {
    /// Returns what was chosen, without its origin.
    pub fn get(&self) -> &T {
        match self {
            Chosen::Demo(chosen) | Chosen::Own(chosen) => chosen,
        }
    }

    /// Returns where it comes from.
    pub fn origin(&self) -> Origin {
        match self {
            Chosen::Demo(_) => Origin::Demo,
            Chosen::Own(_) => Origin::Own,
        }
    }

    fn get_mut(&mut self) -> &mut T {
        match self {
            Chosen::Demo(chosen) | Chosen::Own(chosen) => chosen,
        }
    }
}

/// Chooses the rates of one job: the base rates, then each change of its field book in order.
///
/// `base`: the rates of a firm or of a file; `None` means the demo rates. `changes`: the path of a
/// key and its new value as a person wrote it, see [`Rates::with`]. A change that this version
/// refuses leaves the base rate in force.
#[must_use]
pub fn choose_rates<'c>(
    base: Option<Chosen<Rates>>,
    changes: impl IntoIterator<Item = (&'c str, &'c str)>,
) -> Chosen<Rates> {
    let mut chosen = base.unwrap_or_else(|| Chosen::Demo(Rates::demo()));
    for (key, value) in changes {
        if let Ok(changed) = chosen.get().with(key, value) {
            *chosen.get_mut() = changed;
        }
    }
    chosen
}

/// The rates and the code profile of one takeoff.
#[derive(Clone, Debug, PartialEq)]
pub struct Terms {
    /// The rates, see [`choose_rates`].
    pub rates: Chosen<Rates>,
    /// What the permit office asks for.
    pub code: Chosen<Code>,
    /// The day on which the age of the code profile is judged. `None` means it is not judged.
    pub on: Option<NaiveDate>,
}

impl Terms {
    /// Joins chosen rates with a code profile; `None` means the demo profile.
    #[must_use]
    pub fn new(rates: Chosen<Rates>, code: Option<Chosen<Code>>, on: Option<NaiveDate>) -> Terms {
        Terms {
            rates,
            code: code.unwrap_or_else(|| Chosen::Demo(Code::demo())),
            on,
        }
    }

    /// The demo rates and the demo code profile.
    #[must_use]
    pub fn demo() -> Terms {
        Terms::new(choose_rates(None, []), None, None)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn changes_of_a_job_apply_in_order_over_the_demo_rates() {
        let changes = [("field.price", "40.00"), ("field.price", "41.00")];
        let chosen = choose_rates(None, changes);
        let expected = Rates::demo().with("field.price", "41.00").unwrap();
        assert_eq!(chosen, Chosen::Demo(expected));
    }

    #[test]
    fn a_refused_change_leaves_the_base_rate_and_its_origin() {
        let own = Rates::demo().with("field.price", "40.00").unwrap();
        let changes = [("field.price", "cheap"), ("no.such.key", "1")];
        let chosen = choose_rates(Some(Chosen::Own(own.clone())), changes);
        assert_eq!(chosen, Chosen::Own(own));
        assert_eq!(chosen.origin(), Origin::Own);
    }
}

use super::{Area, Length, RoundTo};

/// A worked-out value with its uncertainty.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Figure<T> {
    /// The value.
    pub value: T,
    /// One standard deviation, in the same unit.
    pub sigma: T,
}

impl Figure<Area> {
    /// The value in words: `2,013 sq ft`.
    #[must_use]
    pub fn words(&self) -> String {
        self.value.words()
    }

    /// Its ± in words, `± 35 sq ft`. Rounded up, so that it never says more than is known.
    #[must_use]
    pub fn give_or_take(&self) -> String {
        let up = self.sigma.in_square_feet().ceil();
        format!("± {}", Area::square_feet(up).words())
    }
}

impl Figure<Length> {
    /// The value in words, rounded: `18 ft 2 in`.
    #[must_use]
    pub fn words(&self, to: RoundTo) -> String {
        self.value.words(to)
    }

    /// Its ± in words, `± 2 in`. Rounded up, so that it never says more than is known.
    #[must_use]
    pub fn give_or_take(&self, to: RoundTo) -> String {
        let step = to.step();
        // A sigma that is a whole number of steps but for rounding stays where it is.
        let steps = (self.sigma / step - 1e-9).ceil().max(0.0);
        format!("± {}", (step * steps).words(to))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn an_area_says_its_give_or_take_rounded_up() {
        let roof = Figure {
            value: Area::square_feet(2013.2),
            sigma: Area::square_feet(34.1),
        };
        assert_eq!(
            (roof.words(), roof.give_or_take()),
            ("2,013 sq ft".into(), "± 35 sq ft".into())
        );
    }

    #[test]
    fn a_length_known_to_a_hair_still_says_one_inch() {
        let leg = |sigma| Figure {
            value: Length::feet(18.16),
            sigma: Length::feet(sigma),
        };
        assert_eq!(leg(0.01).words(RoundTo::Inch), "18 ft 2 in");
        assert_eq!(leg(0.01).give_or_take(RoundTo::Inch), "± 1 in");
        assert_eq!(leg(2.0 / 12.0).give_or_take(RoundTo::Inch), "± 2 in");
        assert_eq!(leg(0.01).give_or_take(RoundTo::TenthFoot), "± 0.1 ft");
        assert_eq!(leg(0.0).give_or_take(RoundTo::Inch), "± 0 in");
    }
}

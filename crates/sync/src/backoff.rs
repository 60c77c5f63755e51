//! How long to rest after failures: longer after each.

/// The longest rest after failures while the program is open.
const LONGEST_MS: u64 = 15_000;
const FIRST_MS: u64 = 500;

/// Failures in a row, and the chance that spreads what comes after them.
#[derive(Clone, Debug)]
pub(crate) struct Backoff {
    failures: u32,
    chance: u64,
}

impl Backoff {
    /// `chance`: any number; two devices with two numbers do not come back at one moment.
    pub fn new(chance: u64) -> Backoff {
        Backoff {
            failures: 0,
            chance: chance | 1,
        }
    }

    pub fn went_well(&mut self) {
        self.failures = 0;
    }

    /// How long to rest after one failure more, milliseconds. `asked`: what the hub asked for,
    /// seconds. Full jitter: anything up to a bound that doubles.
    pub fn after_failure(&mut self, asked: Option<u64>) -> u64 {
        self.failures = self.failures.saturating_add(1);
        // Marsaglia 2003, xorshift: enough to spread, and the same for the same seed.
        self.chance ^= self.chance << 13;
        self.chance ^= self.chance >> 7;
        self.chance ^= self.chance << 17;
        let bound = FIRST_MS << self.failures.min(6);
        let rest = self.chance % (bound.min(LONGEST_MS) + 1);
        rest.max(asked.unwrap_or(0).min(300) * 1000)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn rests_grow_to_a_bound_and_begin_small_again() {
        let mut backoff = Backoff::new(7);
        let mut longest = 0;
        for failures in 1..200 {
            let rest = backoff.after_failure(None);
            assert!(rest <= (FIRST_MS << failures.min(6)).min(LONGEST_MS));
            longest = longest.max(rest);
        }
        assert!(longest > LONGEST_MS / 2, "{longest}");
        backoff.went_well();
        assert!(backoff.after_failure(None) <= 2 * FIRST_MS);
    }

    #[test]
    fn what_the_hub_asks_for_is_kept_to() {
        assert!(Backoff::new(1).after_failure(Some(20)) >= 20_000);
    }
}

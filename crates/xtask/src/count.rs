//! Reads the counts out of what the test runners print.

/// Tests that ran.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Count {
    /// Held.
    pub passed: u32,
    /// Did not.
    pub failed: u32,
}

/// The sum of every summary line, whichever of our runners printed it; `None` where none did.
///
/// Known: cargo-nextest, the standard library's runner (also of doc tests), Node's `node --test`.
pub fn count(lines: &[String]) -> Option<Count> {
    let mut sum: Option<Count> = None;
    for line in lines {
        let line = line.trim_start_matches(['#', 'ℹ', ' ']);
        let of_rust = line.starts_with("Summary [") || line.starts_with("test result:");
        let words: Vec<&str> = line
            .split([' ', ',', ';'])
            .filter(|w| !w.is_empty())
            .collect();
        let found = match words.as_slice() {
            ["pass", n] => n.parse().ok().map(|passed| Count { passed, failed: 0 }),
            ["fail", n] => n.parse().ok().map(|failed| Count { passed: 0, failed }),
            _ if of_rust => Some(Count {
                passed: before(&words, "passed"),
                failed: before(&words, "failed") + before(&words, "timed"),
            }),
            _ => None,
        };
        if let Some(found) = found {
            let so_far = sum.get_or_insert_default();
            so_far.passed += found.passed;
            so_far.failed += found.failed;
        }
    }
    sum
}

/// The number that stands before a word; 0 where the word is not there.
fn before(words: &[&str], word: &str) -> u32 {
    words
        .windows(2)
        .find(|two| two[1] == word)
        .and_then(|two| two[0].parse().ok())
        .unwrap_or(0)
}

#[cfg(test)]
mod tests {
    use super::{Count, count};

    fn counted(text: &str) -> Option<Count> {
        let lines: Vec<String> = text.lines().map(str::to_owned).collect();
        count(&lines)
    }

    #[test]
    fn nextest_says_it_in_one_line() {
        let text = "     Summary [   0.112s] 13 tests run: 11 passed (1 slow), 2 failed, 4 skipped";
        assert_eq!(
            counted(text),
            Some(Count {
                passed: 11,
                failed: 2
            })
        );
    }

    #[test]
    fn the_lines_of_the_standard_runner_add_up() {
        let text = "test result: ok. 3 passed; 0 failed; 0 ignored; 0 measured\n\
                    test result: FAILED. 1 passed; 2 failed; 0 ignored; 0 measured";
        assert_eq!(
            counted(text),
            Some(Count {
                passed: 4,
                failed: 2
            })
        );
    }

    #[test]
    fn node_says_it_in_two_lines() {
        assert_eq!(
            counted("# tests 9\n# pass 8\n# fail 1"),
            Some(Count {
                passed: 8,
                failed: 1
            })
        );
        assert_eq!(
            counted("ℹ pass 5\nℹ fail 0"),
            Some(Count {
                passed: 5,
                failed: 0
            })
        );
    }

    #[test]
    fn a_program_that_counts_nothing_has_no_count() {
        assert_eq!(counted("    Finished `dev` profile\nall pass here"), None);
    }
}

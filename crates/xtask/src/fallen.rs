//! Picks out of a failed program's lines those that say what failed, so that they can stand at the
//! very end of a run: the rest of its log may be cut.

/// Lines shown after a failed test of Node's runner: its error, and where.
const NODE_AFTER: usize = 24;

/// Lines shown of a program that names no failed test.
const LAST: usize = 24;

/// What failed, in the program's own lines.
///
/// Known: cargo-nextest (`FAIL [`), the standard library's runner (`test … FAILED`, panics) and
/// Node's `node --test` (`not ok`). Of any other program, its last lines.
pub fn fallen(lines: &[String]) -> Vec<String> {
    let mut shown = vec![false; lines.len()];
    for (at, line) in lines.iter().enumerate() {
        let bare = line.trim_start();
        let after = if bare.starts_with("not ok ") {
            NODE_AFTER
        } else if bare.starts_with("thread '") && bare.contains("panicked at") {
            3
        } else if ["FAIL [", "TIMEOUT [", "SIGABRT ["]
            .iter()
            .any(|word| bare.starts_with(word))
            || (bare.starts_with("test ") && bare.ends_with("FAILED"))
        {
            1
        } else {
            continue;
        };
        for mark in shown.iter_mut().skip(at).take(after) {
            *mark = true;
        }
    }
    if !shown.contains(&true) {
        let from = lines.len().saturating_sub(LAST);
        return lines[from..].to_vec();
    }
    let picked = lines.iter().zip(shown).filter(|(_, shown)| *shown);
    picked.map(|(line, _)| line.clone()).collect()
}

#[cfg(test)]
mod tests {
    use super::fallen;

    fn of(text: &str) -> Vec<String> {
        fallen(&text.lines().map(str::to_owned).collect::<Vec<_>>())
    }

    #[test]
    fn a_failed_node_test_is_named_with_its_error() {
        let text = "ok 1 - fine\nnot ok 2 - the leaf opens\n  ---\n  error: 'timed out'";
        assert_eq!(
            of(text),
            ["not ok 2 - the leaf opens", "  ---", "  error: 'timed out'"]
        );
    }

    #[test]
    fn a_failed_nextest_test_is_named() {
        let text = "PASS [ 0.1s] a b\nFAIL [ 0.2s] core::x y\nPASS [ 0.1s] c d";
        assert_eq!(of(text), ["FAIL [ 0.2s] core::x y"]);
    }

    #[test]
    fn a_program_that_names_no_test_shows_its_end() {
        let text = (0..40).map(|n| format!("line {n}\n")).collect::<String>();
        let shown = of(&text);
        assert_eq!(
            (shown.len(), shown.last().map(String::as_str)),
            (24, Some("line 39"))
        );
    }
}

//! What holds of every text in both languages.

use eavebook_words::{CatalogLine, Kind, Language, catalog};

fn both() -> Vec<(CatalogLine, CatalogLine)> {
    let [en, es] = Language::ALL.map(catalog);
    assert_eq!(en.len(), es.len());
    en.into_iter().zip(es).collect()
}

fn digits(text: &str) -> Vec<char> {
    let mut digits: Vec<char> = text.chars().filter(char::is_ascii_digit).collect();
    digits.sort_unstable();
    digits
}

#[test]
fn both_languages_have_the_same_ids_and_samples() {
    for (en, es) in both() {
        assert_eq!((&en.id, en.sample), (&es.id, es.sample));
    }
}

#[test]
fn an_id_and_a_sample_name_one_text() {
    let mut keys: Vec<(String, usize)> = catalog(Language::English)
        .into_iter()
        .map(|line| (line.id, line.sample))
        .collect();
    keys.sort();
    let all = keys.len();
    keys.dedup();
    assert_eq!(keys.len(), all);
}

#[test]
fn a_text_reads_alike_in_both_languages_only_where_it_is_marked() {
    let alike: Vec<String> = both()
        .into_iter()
        .filter(|(en, es)| en.text == es.text && !en.same)
        .map(|(en, _)| format!("{} {}", en.id, en.text))
        .collect();
    assert_eq!(alike, Vec::<String>::new());
}

#[test]
fn a_mark_for_texts_that_read_alike_is_needed() {
    let unneeded: Vec<String> = both()
        .into_iter()
        .filter(|(en, es)| en.same && en.text != es.text)
        .map(|(en, _)| en.id)
        .collect();
    assert_eq!(unneeded, Vec::<String>::new());
}

#[test]
fn both_languages_say_the_same_digits() {
    for (en, es) in both() {
        if en.kind != Kind::Spoken && !en.id.contains("date") {
            assert_eq!(
                digits(&en.text),
                digits(&es.text),
                "{}: {} / {}",
                en.id,
                en.text,
                es.text
            );
        }
    }
}

#[test]
fn a_sentence_begins_with_a_capital_or_a_figure_and_ends_with_a_stop() {
    for line in Language::ALL.into_iter().flat_map(catalog) {
        if line.kind != Kind::Sentence {
            continue;
        }
        let first = line.text.chars().next().unwrap_or(' ');
        let begins = !first.is_lowercase() || line.text.starts_with("e4");
        assert!(begins, "{}: {}", line.id, line.text);
        assert!(!line.text.contains("  "), "{}: {}", line.id, line.text);
        assert!(
            !line.text.contains("-0 ") && !line.text.contains("NaN"),
            "{}: {}",
            line.id,
            line.text
        );
    }
}

//! The labels as a TypeScript module for the page: `ui/src/labels.generated.ts`.

use super::Label;
use crate::Language;
use std::fmt::Write as _;

/// Returns the module: for each language a table of the page's labels and one of the labels of papers,
/// by group and name in camel case.
///
/// The tables of one kind have the type of the English one. A label that does not exist is a type
/// error in the page. Labels of papers are apart, so that the built page leaves them out.
#[must_use]
pub fn labels_module() -> String {
    let mut module = String::from(
        "// Written by crates/words/src/label/typescript.rs. Do not edit: `cargo xtask types` writes it.\n",
    );
    for (of_papers, suffix, type_name) in [(false, "", "Labels"), (true, "_PAPERS", "PaperLabels")]
    {
        let labels: Vec<Label> = Label::all()
            .into_iter()
            .filter(|label| is_of_papers(*label) == of_papers)
            .collect();
        _ = writeln!(module, "\nexport const ENGLISH{suffix} = {{");
        write_groups(&mut module, &labels, Language::English);
        _ = writeln!(
            module,
            "}};\n\nexport type {type_name} = typeof ENGLISH{suffix};\n\n\
             export const SPANISH{suffix}: {type_name} = {{"
        );
        write_groups(&mut module, &labels, Language::Spanish);
        module.push_str("};\n");
    }
    module
}

/// Only papers and packets show this label.
const fn is_of_papers(label: Label) -> bool {
    matches!(label, Label::Packet(_) | Label::Paper(_))
}

fn write_groups(module: &mut String, labels: &[Label], language: Language) {
    let mut open_group = String::new();
    for label in labels {
        let id = label.id();
        let Some((group, name)) = id.split_once('.') else {
            continue;
        };
        if group != open_group {
            if !open_group.is_empty() {
                module.push_str("  },\n");
            }
            _ = writeln!(module, "  {}: {{", camel_case(group));
            group.clone_into(&mut open_group);
        }
        let text = label.text(language);
        _ = writeln!(module, "    {}: {text:?},", camel_case(name));
    }
    module.push_str("  },\n");
}

/// Returns `walkRound` for `walk_round`.
fn camel_case(snake_case: &str) -> String {
    let mut words = snake_case.split('_');
    let mut camel = words.next().unwrap_or_default().to_owned();
    for word in words {
        let (first, rest) = word.split_at(word.len().min(1));
        camel.push_str(&first.to_uppercase());
        camel.push_str(rest);
    }
    camel
}

#[cfg(test)]
mod tests {
    use super::{camel_case, labels_module};
    use std::path::Path;

    #[test]
    fn the_page_has_every_label() {
        let file = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../ui/src/labels.generated.ts");
        let module = labels_module();
        let written = std::fs::read_to_string(&file).unwrap_or_default();
        if written != module {
            std::fs::write(&file, &module).unwrap();
            panic!("ui/src/labels.generated.ts was stale and is now rewritten: commit it");
        }
    }

    #[test]
    fn a_name_of_several_words_becomes_camel_case() {
        assert_eq!(camel_case("how_off_photo"), "howOffPhoto");
        assert_eq!(camel_case("c10_line"), "c10Line");
        assert_eq!(camel_case("undo"), "undo");
    }
}

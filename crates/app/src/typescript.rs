//! The ui's types, written from the boundary's own: `ui/src/generated.ts`.

use crate::reply::Reply;
use crate::request::Request;
use std::collections::BTreeMap;
use ts_rs::{Config, TS, TypeVisitor};

/// Everything that [`Request`] and [`Reply`] are made of, as one TypeScript module in the order of
/// the names, so that a change of one shape changes one place.
#[must_use]
pub fn module() -> String {
    let mut found = Declarations::default();
    found.visit::<Request>();
    found.visit::<Reply>();
    let mut text = String::from(
        "// Written by crates/app/src/typescript.rs from the shapes of the boundary. Do not edit:\n\
         // `cargo test -p eavebook-app` writes it anew when they change.\n",
    );
    for declaration in found.by_name.values() {
        text.push('\n');
        text.push_str(declaration);
    }
    text
}

/// One declaration a type, found by walking from the outermost types inward.
#[derive(Default)]
struct Declarations {
    by_name: BTreeMap<String, String>,
}

impl TypeVisitor for Declarations {
    fn visit<T: TS + 'static + ?Sized>(&mut self) {
        let config = Config::default();
        // Plain types (numbers, strings, ids) have no file of their own and need no declaration.
        if T::output_path().is_none() {
            return T::visit_dependencies(self);
        }
        let name = T::ident(&config);
        if self.by_name.contains_key(&name) {
            return;
        }
        let docs = T::docs().unwrap_or_default();
        let declaration = format!("{docs}export {}\n", T::decl(&config));
        self.by_name.insert(name, declaration);
        T::visit_dependencies(self);
    }
}

#[cfg(test)]
mod tests {
    use super::module;
    use std::path::Path;

    #[test]
    fn the_ui_has_the_types_of_the_boundary() {
        let file = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../ui/src/generated.ts");
        let now = module();
        let there = std::fs::read_to_string(&file).unwrap_or_default();
        if there != now {
            std::fs::write(&file, &now).unwrap();
            panic!("ui/src/generated.ts was stale and has been written anew: commit it");
        }
    }

    #[test]
    fn every_number_of_the_boundary_is_one_that_json_can_carry() {
        // A 64-bit integer would be typed `bigint`, while JSON.parse makes a number of it.
        assert!(!module().contains("bigint"));
    }

    #[test]
    fn types_within_types_are_declared_too() {
        for name in ["type Request ", "type Reply ", "type Thing ", "type Slot "] {
            assert!(module().contains(name), "{name}");
        }
    }
}

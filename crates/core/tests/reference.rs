//! The examples of the survey file's reference page are what it says they are.
#![allow(clippy::unwrap_used, reason = "a test fails by panicking")]

use eavebook_core::solve::{Solved, solve};
use eavebook_core::survey_file;

const PAGE: &str = include_str!("../src/survey_file/REFERENCE.md");

/// A section that promises an area, with its file.
struct Example {
    title: &'static str,
    area: f64,
    file: &'static str,
}

fn examples() -> Vec<Example> {
    let sections = PAGE.split("\n## ").skip(1);
    sections.filter_map(example).collect()
}

fn example(section: &'static str) -> Option<Example> {
    let (_, after) = section.split_once("Roof area: ")?;
    let (area, _) = after.split_once(" sq ft").unwrap();
    let (_, after) = section.split_once("```json\n").unwrap();
    let (file, rest) = after.split_once("```").unwrap();
    assert!(!rest.contains("```"), "one file a section: {section}");
    Some(Example {
        title: section.lines().next().unwrap(),
        area: area.parse().unwrap(),
        file,
    })
}

fn solved(example: &Example) -> Solved {
    let file = survey_file::read(example.file.as_bytes())
        .unwrap_or_else(|refused| unreachable!("{}: {refused}", example.title));
    solve(&file.survey).unwrap_or_else(|refused| unreachable!("{}: {refused}", example.title))
}

#[test]
fn every_example_has_the_area_that_is_worked_out_beside_it() {
    let examples = examples();
    assert_eq!(examples.len(), 13);
    for example in examples {
        let area = solved(&example).totals.area.unwrap().value.in_square_feet();
        // Two decimals stand on the page; a roof from readings is adjusted, half a tenth at most.
        assert!(
            (area - example.area).abs() < 0.05,
            "{}: {area} for {}",
            example.title,
            example.area
        );
    }
}

#[test]
fn where_a_wall_rises_past_the_roof_its_edge_is_no_eave_and_no_rake() {
    for title in ["A wall", "Walls that rise past a lower roof"] {
        let all = examples();
        let example = all.iter().find(|one| one.title == title).unwrap();
        let edges = solved(example).totals.edges;
        let (_, length) = edges
            .iter()
            .find(|(kind, _)| kind.key() == "head_wall")
            .unwrap();
        assert!((length.in_feet() - 12.0).abs() < 1e-6, "{title}");
    }
}

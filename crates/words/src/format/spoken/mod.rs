//! A reading as it is spoken back: digits singly, as in radio telephony (ICAO Annex 10 vol. II,
//! 5.2.1.4), fractions by their names.

pub(super) mod en;
pub(super) mod es;

/// The characters of a figure by their names, one by one; one without a name is left out.
fn singly(figure: &str, name: impl Fn(char) -> Option<&'static str>) -> String {
    let names: Vec<&str> = figure.chars().filter_map(name).collect();
    names.join(" ")
}

//! A hundred thousand broken inputs for each parser: what a fuzzer does, on any compiler.
#![allow(clippy::unwrap_used, reason = "a test fails by panicking")]

#[allow(
    dead_code,
    unused_imports,
    reason = "some laws are asked of other roofs too"
)]
mod laws;

/// How many inputs each parser is given.
const INPUTS: usize = 100_000;

/// The same numbers each run (Marsaglia 2003, xorshift).
struct Dice(u64);

impl Dice {
    fn below(&mut self, sides: usize) -> usize {
        self.0 ^= self.0 << 13;
        self.0 ^= self.0 >> 7;
        self.0 ^= self.0 << 17;
        usize::try_from(self.0 >> 33).unwrap() % sides.max(1)
    }
}

/// One to four times: a byte changed, a piece taken out, said twice or brought in from another
/// seed, or a word put in that parsers stumble over.
fn mutated(seeds: &[Vec<u8>], words: &[&str], dice: &mut Dice) -> Vec<u8> {
    let mut bytes = seeds[dice.below(seeds.len())].clone();
    for _ in 0..=dice.below(4) {
        let at = dice.below(bytes.len() + 1);
        let upto = (at + 1 + dice.below(12)).min(bytes.len());
        match dice.below(6) {
            0 if at < bytes.len() => bytes[at] = u8::try_from(dice.below(256)).unwrap(),
            1 if at < bytes.len() => bytes[at] ^= 1 << dice.below(8),
            2 if at < upto => drop(bytes.drain(at..upto)),
            3 if at < upto => {
                let piece = bytes[at..upto].to_vec();
                bytes.splice(at..at, piece);
            }
            4 => {
                let other = &seeds[dice.below(seeds.len())];
                let from = dice.below(other.len() + 1);
                let piece = &other[from..(from + dice.below(40)).min(other.len())];
                bytes.splice(at..at, piece.iter().copied());
            }
            _ => {
                let word = words[dice.below(words.len())];
                bytes.splice(at..at, word.bytes());
            }
        }
    }
    bytes
}

#[test]
fn a_hundred_thousand_mutated_tape_texts_are_read_or_refused() {
    let listed: serde_json::Value = serde_json::from_str(include_str!("data/tape.json")).unwrap();
    let good = listed["good"]
        .as_array()
        .unwrap()
        .iter()
        .map(|pair| &pair[0]);
    let bad = listed["bad"].as_array().unwrap().iter();
    let seeds: Vec<Vec<u8>> = good
        .chain(bad)
        .map(|text| text.as_str().unwrap().as_bytes().to_vec())
        .collect();
    let words = [
        "'",
        "\"",
        " ft",
        "in.",
        "½",
        "⅞",
        "1/2",
        "-",
        "′",
        "\u{a0}",
        "m",
        "0",
        "9999999999",
        ".",
    ];
    let mut dice = Dice(20_260_101);
    let mut read = 0;
    for _ in 0..INPUTS {
        let bytes = mutated(&seeds, &words, &mut dice);
        let text = String::from_utf8_lossy(&bytes);
        laws::of_tape_text(&text);
        read += usize::from(eavebook_core::units::Tape::read(&text).is_ok());
    }
    // Both ways must be walked often, or the test asks nothing.
    assert!((INPUTS / 200..INPUTS).contains(&read), "{read} were read");
}

#[test]
fn a_hundred_thousand_mutated_survey_files_are_read_or_refused() {
    let seeds: Vec<Vec<u8>> = [
        include_str!("data/house.json"),
        include_str!("data/known.json"),
    ]
    .map(|text| text.as_bytes().to_vec())
    .into();
    let words = [
        "null",
        "true",
        "NaN",
        "1e999",
        "-0",
        "0.5",
        "[",
        "]",
        "{",
        "}",
        ",",
        ":",
        "\"",
        "\\u0000",
        "\\ud83d\\ude00",
        "[[[[",
        "\"pitch\": 6",
        "\"leg\": 1",
        " ",
        "\n",
        "360",
        "-90",
    ];
    let mut dice = Dice(20_260_102);
    let mut read = 0;
    for _ in 0..INPUTS {
        let bytes = mutated(&seeds, &words, &mut dice);
        laws::of_survey_file(&bytes);
        read += usize::from(eavebook_core::survey_file::read(&bytes).is_ok());
    }
    assert!((INPUTS / 200..INPUTS).contains(&read), "{read} were read");
}

#[test]
fn mutated_rates_and_code_profiles_are_read_or_refused() {
    /// Rates are long: a twentieth of the others takes as much time.
    const FEWER: usize = INPUTS / 20;
    let seeds: Vec<Vec<u8>> = [
        include_str!("../../../assets/rates-demo.toml"),
        include_str!("../../../assets/code-demo.toml"),
        "[[0, 1.0], [7, 1.2]]",
        "34.50",
    ]
    .map(|text| text.as_bytes().to_vec())
    .into();
    let words = [
        "null",
        "nan",
        "inf",
        "-1",
        "0",
        "1e308",
        "\"\"",
        "[",
        "]",
        "=",
        "\n",
        "#",
        "other",
        "2024-05-01",
        "'",
        "\"roof\"",
        "true",
        ".",
    ];
    let mut dice = Dice(20_260_103);
    let mut read = 0;
    for _ in 0..FEWER {
        let bytes = mutated(&seeds, &words, &mut dice);
        let text = String::from_utf8_lossy(&bytes);
        laws::of_settings(&text);
        let rates =
            eavebook_core::settings::Rates::from_toml(&text, eavebook_core::settings::Blanks::Kept);
        read += usize::from(rates.is_ok());
    }
    assert!((FEWER / 200..FEWER).contains(&read), "{read} were read");
}

#[test]
fn ten_thousand_mutated_outlines_are_roofed_whole_or_refused() {
    /// Each is raised two or three times and looked at from all sides.
    const FEWER: usize = INPUTS / 10;
    let seeds: Vec<Vec<u8>> = [
        include_bytes!("../../../tests/fuzz/seeds/roof/rectangle").as_slice(),
        include_bytes!("../../../tests/fuzz/seeds/roof/ell"),
        include_bytes!("../../../tests/fuzz/seeds/roof/tee"),
        include_bytes!("../../../tests/fuzz/seeds/roof/cross"),
        include_bytes!("../../../tests/fuzz/seeds/roof/bay"),
        include_bytes!("../../../tests/fuzz/seeds/roof/wing"),
    ]
    .map(<[u8]>::to_vec)
    .into();
    // A corner that is another again, a hair beside it, far off; a gable, no slope, the steepest.
    let words = [
        "(",
        "P\0\0H",
        "P\0\u{1}H",
        "\u{7f}\u{7f}\0H",
        "H",
        "\0",
        "0",
        "\u{1}",
    ];
    let mut dice = Dice(20_260_104);
    let mut raised = 0;
    for _ in 0..FEWER {
        raised += usize::from(laws::of_roof(&mutated(&seeds, &words, &mut dice)).is_some());
    }
    println!("{FEWER} mutated outlines: {raised} raised whole, the rest refused by body");
    assert!(
        (FEWER / 20..FEWER).contains(&raised),
        "{raised} were raised"
    );
}

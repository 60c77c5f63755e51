use crate::{Count, Noun, Quoted};
use chrono::NaiveDate;

messages! {
    /// What to check before a takeoff is used, and why a roof has none.
    TakeoffMessage, "takeoff";
    /// The rates are those that come with the program.
    DemoRates;
    /// The code profile is the one that comes with the program.
    DemoCode;
    /// The overhang was not measured, so the ice and water barrier uses that of the rates.
    OverhangNotGiven {
        /// The building.
        building: Quoted,
        /// The leg, from 1.
        leg: u32,
    } = { building: Quoted::from("main"), leg: 3 };
    /// Nobody counted the layers of the existing roof.
    LayersNotGiven;
    /// Weights are estimates, and stacked bundles load the roof.
    Loads;
    /// The code profile is over a year old.
    CodeDateOld {
        /// The day on which it was read.
        read: NaiveDate,
        /// The day on which its age is judged.
        on: NaiveDate,
        /// Its age, years before months.
        age: Vec<Count>,
    } = {
        read: NaiveDate::default(),
        on: NaiveDate::default(),
        age: vec![Count::new(1, Noun::Year), Count::new(1, Noun::Month)],
    },
        {
            read: NaiveDate::default(),
            on: NaiveDate::default(),
            age: vec![Count::new(2, Noun::Year), Count::new(2, Noun::Month)],
        };
    /// The code profile was read after the day on which it is judged.
    CodeDateLater {
        /// The day on which it was read.
        read: NaiveDate,
        /// The day on which it is judged.
        on: NaiveDate,
    } = { read: NaiveDate::default(), on: NaiveDate::default() };
    /// A face is too flat for shingles.
    TooFlat {
        /// The building.
        building: Quoted,
        /// The leg, from 1.
        leg: u32,
    } = { building: Quoted::from("main"), leg: 3 };
    /// The roof is larger than any building.
    TooLarge;
    /// The faces take more courses than the program counts.
    TooManyCourses {
        /// The leg, from 1.
        leg: u32,
    } = { leg: 3 };
}

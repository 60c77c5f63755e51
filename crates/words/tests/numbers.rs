//! Our rules for numbers and plurals beside those of the Unicode locale data (icu4x, from CLDR).

use eavebook_words::{Count, En, Es, Format, Noun};
use icu_decimal::DecimalFormatter;
use icu_decimal::input::Decimal;
use icu_locale_core::locale;
use icu_plurals::{PluralCategory, PluralRules};

#[test]
fn plurals_agree_with_the_unicode_rules_from_0_to_10000() {
    for (locale, format) in [
        (locale!("en-US"), &En as &dyn Format),
        (locale!("es-US"), &Es as &dyn Format),
    ] {
        let rules = PluralRules::try_new(locale.into(), Default::default()).unwrap();
        for n in 0..=10_000_u64 {
            let one = rules.category_for(n) == PluralCategory::One;
            let ours = format.noun(Noun::Bundle, n) == format.noun(Noun::Bundle, 1);
            assert_eq!(one, ours, "{n}");
        }
    }
}

#[test]
fn numbers_are_grouped_as_the_unicode_data_has_it_from_0_to_10000() {
    for (locale, format) in [
        (locale!("en-US"), &En as &dyn Format),
        (locale!("es-US"), &Es as &dyn Format),
    ] {
        let theirs = DecimalFormatter::try_new(locale.into(), Default::default()).unwrap();
        for n in 0..=10_000_u32 {
            let expected = theirs.format(&Decimal::from(n)).to_string();
            assert_eq!(format.number(f64::from(n), 1), expected);
        }
        let mut tenths = Decimal::from(21_015);
        tenths.multiply_pow10(-1);
        assert_eq!(format.number(2101.5, 1), theirs.format(&tenths).to_string());
    }
}

#[test]
fn a_count_takes_the_noun_in_one_or_many() {
    assert_eq!(En.count(Count::new(1, Noun::Bundle)), "1 bundle");
    assert_eq!(Es.count(Count::new(2, Noun::Bundle)), "2 bultos");
    assert_eq!(Es.count(Count::new(1_200, Noun::Sheet)), "1,200 hojas");
}

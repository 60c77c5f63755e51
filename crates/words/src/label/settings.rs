//! Settings of this device.

labels! {
    /// Settings of this device.
    SettingsLabel, settings;
    Title: heading;
    ColdHands;
    MirrorHand;
    Sound;
    SingleLetterKeys;
    On;
    Off;
    MyTapeReads;
    TapeFeetInches;
    TapeFeetTenths;
    TapeMetres;
    FinestFraction;
    FractionEighths;
    FractionQuarters;
    HouseOnMy;
    SideRight;
    SideLeft;
    Screen;
    ThemeSun;
    ThemeNight;
    Language;
    LanguageEnglish = same;
    LanguageSpanish = same;
}

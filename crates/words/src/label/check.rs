//! Leave-site check: what is open before driving off.

labels! {
    /// Leave-site check: what is open before driving off.
    CheckLabel, check;
    OpenItems: heading;
    NothingOpen: sentence;
    YouWereOnThis: sentence;
    NextPage;
    WhyOpen;
    Dark;
    Weather;
    NoAccess;
    ComingBack;
    Leave;
    BackToCheck;
}

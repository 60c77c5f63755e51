//! Today: the jobs and the search over all of them.

labels! {
    /// Today: the jobs and the search over all of them.
    TodayLabel, today;
    Stops: heading;
    NoStops: sentence;
    Search;
    Found: heading;
    NothingFound: sentence;
    StartAJob;
    Address;
    Start;
    NoAddress: sentence;
}

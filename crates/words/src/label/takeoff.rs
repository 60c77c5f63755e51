//! Takeoff: quantities, order list and price.

labels! {
    /// Takeoff: quantities, order list and price.
    TakeoffLabel, takeoff;
    WorkingOut;
    NothingYet: heading;
    NotKnown: heading;
    NotPriced: heading;
    Changed: heading;
    HowWorkedOut;
    Lines;
    MadeOf: heading;
    CodeProfile: heading;
    Rates: heading;
    Blank;
    OurRate;
    Change;
    LeaveBlank;
    BackToOurRate;
}

//! Arrive: the front, the people, permissions, hazards, promises.

labels! {
    /// Arrive: the front, the people, permissions, hazards, promises.
    ArriveLabel, arrive;
    ThisIsTheFront;
    StandBefore: sentence;
    NoCompass: sentence;
    WhoIMet: heading;
    NobodyRecorded: sentence;
    NameOrRole;
    CanApprove;
    Record;
    GroundOnly: sentence;
    Permissions: heading;
    Hazards: heading;
    CheckIn: heading;
    KnowsWhere;
    Until;
    RecordCheckIn;
    BeforeWork: heading;
    Promised: heading;
    WhatWasPromised;
    WritePromise: sentence;
    RecordPromise;
    NothingPromised;
}

//! The pitch of one face: by phone, level and tape, photo or number.

labels! {
    /// The pitch of one face: by phone, level and tape, photo or number.
    PitchLabel, pitch;
    Title: heading;
    Waiting: sentence;
    LayPhone: sentence;
    TurnPhone: sentence;
    Capture;
    FlipAndRepeat;
    EnterIt;
    FirstOneWay: sentence;
    WaitsForFlip: sentence;
    Denied: sentence;
    NoTilt: sentence;
    PlumbPhoto;
    PlumbHow: sentence;
    MarkPhoto;
    MarkHow: sentence;
    SpotLeftEave;
    SpotTop;
    SpotRightEave;
    SpotLeftGround;
    SpotRightGround;
    Marked;
    NotMarked;
    Nearer;
    MoveLeft;
    MoveUp;
    MoveDown;
    MoveRight;
    NotGot;
    RecordedNotGot: sentence;
    RiseByNumber: heading;
    ByNumber;
    AndAHalf;
    LevelAndTape;
    LevelInches: heading;
    RiseInches: heading;
    OneInchLess;
    OneInchMore;
    SameIsNoReading: sentence;
    StayDown: sentence;
    TapARise: sentence;
}

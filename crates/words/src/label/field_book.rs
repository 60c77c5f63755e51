//! Field book: the readings, the keypad, the read-back and the corner pad.

labels! {
    /// Field book: the readings, the keypad, the read-back and the corner pad.
    FieldBookLabel, field_book;
    Readings: heading;
    NoReadings: sentence;
    Keypad;
    PutKeypadAway;
    TakeBackOne;
    Fraction;
    BookIt;
    Even;
    Ft;
    Inches;
    Meters = same;
    NextKeyHere;
    HowRead;
    HowTaped;
    HowPaced;
    HowOffPhoto;
    HowTold;
    TapeFollows;
    FollowsEaveEdge;
    FollowsGutterFace;
    FollowsWall;
    Two;
    One;
    Blind: sentence;
    ReadBack;
    Right;
    Answered: sentence;
    NotYet: sentence;
    Strike;
    CornerPad;
    OutsideCorner;
    InsideCorner;
    Angled;
    StraightOn;
    TurnInDegrees;
    LessDegrees;
    MoreDegrees;
    TowardBuilding;
    AwayFromBuilding;
    Closure: heading;
    OrAnother;
}

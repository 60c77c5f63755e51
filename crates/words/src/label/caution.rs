//! Cautions at the moment of choice: whole the first time each day, then one line.

labels! {
    /// Cautions at the moment of choice: whole the first time each day, then one line.
    CautionLabel, caution;
    C1Whole: sentence;
    C1Line: sentence;
    C2Whole: sentence;
    C2Line: sentence;
    C3Whole: sentence;
    C3Line: sentence;
    C4Whole: sentence;
    C4Line: sentence;
    C5Whole: sentence;
    C5Line: sentence;
    C6Whole: sentence;
    C6Line: sentence;
    C7Whole: sentence;
    C7Line: sentence;
    C8Whole: sentence;
    C8Line: sentence;
    C9Whole: sentence;
    C9Line: sentence;
    C10Whole: sentence;
    C10Line: sentence;
    C11Whole: sentence;
    C11Line: sentence;
    C12Whole: sentence;
    C12Line: sentence;
}

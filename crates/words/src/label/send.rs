//! Handing a packet on.

labels! {
    /// Handing a packet on.
    SendLabel, send;
    Send: heading;
    SentAndWaiting: heading;
    To;
    Shared: sentence;
    Saved: sentence;
    Kept: sentence;
    Gone: sentence;
    PassOn;
    HandedOn;
    DoNotSend;
    Proof: sentence;
}

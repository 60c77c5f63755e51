//! Job file: making packets and their papers.

labels! {
    /// Job file: making packets and their papers.
    JobFileLabel, job_file;
    WhoFor;
    MakePacket;
    Making: sentence;
    Packets: heading;
    NoPackets: sentence;
    StillOpen: heading;
    NothingOpen: sentence;
    InItAsNotKnown: sentence;
    NotKnownInIt: heading;
    MissingFromIt: heading;
    FileGone: sentence;
    Save;
    File;
    Contents;
    Choose: sentence;
}

use crate::Quoted;

messages! {
    /// Why a record is not a valid entry.
    EntryMessage, "entry";
    /// It is not JSON, or a field is missing or has another type.
    NotAnEntry {
        /// The parser's message.
        cause: Quoted,
    } = { cause: "the field hlc is missing".into() };
    /// Its id is not a UUID of version 7.
    InvalidId {
        /// The id.
        entry: Quoted,
    } = { entry: "00000000-0000-4000-8000-000000000001".into() };
    /// Its body has another digest than the one recorded.
    ChangedBody {
        /// The id.
        entry: Quoted,
    } = { entry: "01975000-0000-7000-8000-000000000001".into() };
    /// Its local time is not RFC 3339 with an offset.
    InvalidLocalTime {
        /// The id.
        entry: Quoted,
        /// The time as written.
        time: Quoted,
    } = { entry: "01975000-0000-7000-8000-000000000001".into(), time: "2:41 pm".into() };
}

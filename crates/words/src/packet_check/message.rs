use crate::Quoted;

messages! {
    /// Why a file is not a whole packet.
    PacketCheckMessage, "packet_check";
    /// The file cannot be read.
    Unreadable {
        /// Of the system.
        cause: Quoted,
    } = { cause: "data/x".into() };
    /// The file is not a zip, or is cut short.
    NotPacket {
        /// Of the zip reader.
        cause: Quoted,
    } = { cause: "data/x".into() };
    /// A path that leads out of the packet.
    PathOutside {
        /// The path.
        path: Quoted,
    } = { path: "data/x".into() };
    /// A link.
    Link {
        /// The path.
        path: Quoted,
    } = { path: "data/x".into() };
    /// Too many bytes.
    TooLarge;
    /// Too many files.
    TooManyFiles {
        /// How many are opened.
        most: u64,
    } = { most: 20_000 };
    /// One path twice.
    Twice {
        /// The path.
        path: Quoted,
    } = { path: "data/x".into() };
    /// A part that every packet has is missing.
    PartMissing {
        /// Its path.
        part: Quoted,
    } = { part: "data/x".into() };
    /// A file is not as it was packed.
    Altered {
        /// The path.
        path: Quoted,
    } = { path: "data/x".into() };
    /// A file that the list does not name.
    NotListed {
        /// The path.
        path: Quoted,
    } = { path: "data/x".into() };
    /// A list that cannot be read.
    BadList {
        /// Its path.
        file: Quoted,
        /// Of the reader.
        cause: Quoted,
    } = { file: "packet.json".into(), cause: "line 3".into() };
    /// A format of a later version.
    NewerFormat {
        /// Its name.
        format: Quoted,
    } = { format: "eavebook-packet/2".into() };
    /// A packet made for a reader who does not get the entries.
    NoEntries {
        /// As the packet names it.
        reader: Quoted,
    } = { reader: "owner".into() };
}

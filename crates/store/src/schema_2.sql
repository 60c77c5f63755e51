-- The field book, version 2: what it shares with a hub.

-- The hub that this book shares with, and how far its feed was read. Its address and the token are
-- not here but in the file pairing.json, so that no copy of this file lets anybody in.
CREATE TABLE hubs (
    id     TEXT NOT NULL PRIMARY KEY,
    epoch  TEXT NOT NULL,               -- another one: the hub was restored, nothing is proven there
    cursor TEXT NOT NULL,               -- where its feed goes on; empty: from the beginning
    this   INTEGER NOT NULL CHECK (this IN (0, 1))
) STRICT;
CREATE UNIQUE INDEX one_this_hub ON hubs (this) WHERE this = 1;

-- Photos that a hub has acknowledged. A photo without a row here is waiting.
CREATE TABLE photos_out (
    sha256 TEXT NOT NULL,
    hub    TEXT NOT NULL,
    epoch  TEXT NOT NULL,
    PRIMARY KEY (sha256, hub)
) STRICT, WITHOUT ROWID;

-- What a hub would not take: kept here and shown, not offered again.
CREATE TABLE turned_back (
    what   TEXT NOT NULL,               -- an entry's id or a photo's SHA-256
    hub    TEXT NOT NULL,
    reason TEXT NOT NULL,
    PRIMARY KEY (what, hub)
) STRICT, WITHOUT ROWID;

-- What came from a hub and cannot be read as an entry: kept as it came.
CREATE TABLE unreadable (
    text   TEXT NOT NULL PRIMARY KEY,
    reason TEXT NOT NULL
) STRICT;

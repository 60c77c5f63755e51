-- The field book, version 1. Read it with the sqlite3 shell:
--   select local_time, author, kind, body from entries order by hlc;

-- One row for each thing booked. A row is written once and never changed.
CREATE TABLE entries (
    id           TEXT NOT NULL PRIMARY KEY, -- UUID version 7
    book         TEXT NOT NULL,             -- the job
    device       TEXT NOT NULL,
    incarnation  TEXT NOT NULL,             -- which life of that device's store
    dseq         INTEGER NOT NULL,          -- count in it: a fact, not a key
    author       TEXT NOT NULL,
    hlc          TEXT NOT NULL,             -- ms.counter: order of display
    kind         TEXT NOT NULL,
    kind_version INTEGER NOT NULL,
    local_time   TEXT NOT NULL,             -- RFC 3339 with offset
    supersedes   TEXT NOT NULL,             -- JSON list of entry ids
    refs         TEXT NOT NULL,             -- JSON list of entry ids and photo hashes
    sha256       TEXT NOT NULL,             -- of the body's bytes
    body         TEXT NOT NULL,             -- the bytes first written
    other        TEXT NOT NULL              -- JSON: fields that the writer of this row did not know
) STRICT;
CREATE INDEX entries_of_book ON entries (book);

-- An entry that came with an id that is taken by another content: kept and shown, never dropped.
CREATE TABLE quarantine (
    entry TEXT NOT NULL PRIMARY KEY,        -- the whole entry as JSON
    id    TEXT NOT NULL REFERENCES entries (id)
) STRICT;

-- Photos that are on disk, in the folder photos, under their SHA-256.
CREATE TABLE photos (
    sha256 TEXT NOT NULL PRIMARY KEY,
    size   INTEGER NOT NULL,
    state  TEXT NOT NULL CHECK (state IN ('kept'))
) STRICT;

-- Half-typed readings of this device. No entries: gone in the transaction that books.
CREATE TABLE drafts (
    book TEXT NOT NULL,
    name TEXT NOT NULL,
    body TEXT NOT NULL,
    PRIMARY KEY (book, name)
) STRICT, WITHOUT ROWID;

-- This device, and others once they are met.
CREATE TABLE devices (
    id          TEXT NOT NULL PRIMARY KEY,
    incarnation TEXT NOT NULL,
    name        TEXT NOT NULL,
    author      TEXT NOT NULL,
    this        INTEGER NOT NULL CHECK (this IN (0, 1)),
    dseq        INTEGER NOT NULL,           -- the last count given
    hlc         TEXT NOT NULL,              -- the last stamp given
    settings    TEXT NOT NULL               -- JSON
) STRICT;
CREATE UNIQUE INDEX one_this_device ON devices (this) WHERE this = 1;

-- What a hub has acknowledged. An entry without a row here is waiting.
CREATE TABLE outbox (
    entry TEXT NOT NULL REFERENCES entries (id),
    hub   TEXT NOT NULL,
    epoch TEXT NOT NULL,
    PRIMARY KEY (entry, hub)
) STRICT, WITHOUT ROWID;

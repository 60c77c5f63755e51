-- What a hub holds. Photos lie beside it as files; a row of `blobs` says that one is whole.
CREATE TABLE hub (
    one INTEGER PRIMARY KEY CHECK (one = 1),
    hub_id TEXT NOT NULL,
    epoch TEXT NOT NULL,            -- drawn anew by each restore
    url TEXT                        -- where it listened last, for the links of pairing codes
) STRICT;

CREATE TABLE companies (
    id INTEGER PRIMARY KEY,
    name TEXT NOT NULL UNIQUE,
    seq INTEGER NOT NULL DEFAULT 0, -- of its last entry: dense, never used twice
    count INTEGER NOT NULL DEFAULT 0,
    sum TEXT NOT NULL               -- digest of all its entries
) STRICT;

CREATE TABLE devices (
    company INTEGER NOT NULL REFERENCES companies (id),
    device TEXT NOT NULL,
    name TEXT NOT NULL,
    author TEXT NOT NULL,
    paired TEXT NOT NULL,
    token_id TEXT NOT NULL UNIQUE,
    token_sha256 BLOB NOT NULL,     -- of the secret, which is nowhere
    revoked TEXT,
    duplicate INTEGER NOT NULL DEFAULT 0, -- two phones count as this one
    PRIMARY KEY (company, device)
) STRICT;

CREATE TABLE codes (
    name TEXT PRIMARY KEY,          -- the part of a code that says which one it is
    company INTEGER NOT NULL REFERENCES companies (id),
    author TEXT,
    typed_sha256 BLOB NOT NULL,
    link_sha256 BLOB NOT NULL,
    ends INTEGER NOT NULL,          -- seconds since 1970
    tries INTEGER NOT NULL DEFAULT 0
) STRICT;

CREATE TABLE entries (
    row INTEGER PRIMARY KEY,
    company INTEGER NOT NULL REFERENCES companies (id),
    seq INTEGER NOT NULL,
    id TEXT NOT NULL,
    book TEXT NOT NULL,
    device TEXT NOT NULL,
    incarnation TEXT NOT NULL,
    dseq INTEGER NOT NULL,
    sha256 TEXT NOT NULL,
    entry BLOB NOT NULL,            -- the JSON text as it came
    UNIQUE (company, id),
    UNIQUE (company, seq)
) STRICT;
CREATE INDEX entries_of_a_book ON entries (company, book);
CREATE INDEX entries_of_a_life ON entries (company, device, incarnation, dseq);

-- Entries whose id was taken by another content.
CREATE TABLE conflicts (
    row INTEGER PRIMARY KEY,
    company INTEGER NOT NULL REFERENCES companies (id),
    id TEXT NOT NULL,
    content BLOB NOT NULL,          -- SHA-256 of its fields in one order: each is kept once
    entry BLOB NOT NULL,
    UNIQUE (company, content)
) STRICT;

CREATE TABLE blobs (
    company INTEGER NOT NULL REFERENCES companies (id),
    sha256 TEXT NOT NULL,
    size INTEGER NOT NULL,
    PRIMARY KEY (company, sha256)
) STRICT, WITHOUT ROWID;

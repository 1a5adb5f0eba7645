-- The book of one or more farms. Every key is led by the farm, as in PostgreSQL.

CREATE TABLE farm (
    farm BLOB NOT NULL PRIMARY KEY CHECK (length(farm) = 16),
    created_millis INTEGER NOT NULL
) STRICT, WITHOUT ROWID;

-- Append-only. `bytes` stand as written; the other columns repeat what is in them, so that it can be found.
-- The hash is part of the key because the same id with other bytes is a fault to be shown, never one to be lost.
CREATE TABLE entry (
    farm BLOB NOT NULL REFERENCES farm (farm),
    id BLOB NOT NULL CHECK (length(id) = 16),
    hash BLOB NOT NULL CHECK (length(hash) = 32),
    device BLOB NOT NULL CHECK (length(device) = 16),
    sequence INTEGER NOT NULL CHECK (sequence >= 1),
    day TEXT NOT NULL,
    kind TEXT NOT NULL,
    clock_millis INTEGER NOT NULL,
    clock_counter INTEGER NOT NULL,
    bytes BLOB NOT NULL,
    PRIMARY KEY (farm, id, hash)
) STRICT;

CREATE INDEX entry_by_device ON entry (farm, device, sequence, hash);

-- What the entries of a device add up to, kept beside them in the same transaction. It can be counted anew from `entry`.
-- `contiguous` is the highest sequence below which none is missing.
CREATE TABLE device (
    farm BLOB NOT NULL REFERENCES farm (farm),
    device BLOB NOT NULL,
    entry_count INTEGER NOT NULL,
    contiguous INTEGER NOT NULL,
    PRIMARY KEY (farm, device)
) STRICT, WITHOUT ROWID;

-- Half-filled forms. Not part of the book: written over, and deleted.
CREATE TABLE draft (
    farm BLOB NOT NULL REFERENCES farm (farm),
    key TEXT NOT NULL,
    body TEXT NOT NULL,
    person BLOB NOT NULL,
    updated_millis INTEGER NOT NULL,
    PRIMARY KEY (farm, key)
) STRICT, WITHOUT ROWID;

-- Names apart from the entries, so that a person can be forgotten. A null name was blanked and is never set again.
CREATE TABLE person (
    farm BLOB NOT NULL REFERENCES farm (farm),
    person BLOB NOT NULL,
    name TEXT,
    PRIMARY KEY (farm, person)
) STRICT, WITHOUT ROWID;

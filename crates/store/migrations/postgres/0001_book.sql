-- The same tables as in SQLite; every key is led by the farm, so rows shard by farm. What they mean is told there.

CREATE TABLE farm (
    farm BYTEA NOT NULL PRIMARY KEY CHECK (octet_length(farm) = 16),
    created_millis BIGINT NOT NULL
);

CREATE TABLE entry (
    farm BYTEA NOT NULL REFERENCES farm (farm),
    id BYTEA NOT NULL CHECK (octet_length(id) = 16),
    hash BYTEA NOT NULL CHECK (octet_length(hash) = 32),
    device BYTEA NOT NULL CHECK (octet_length(device) = 16),
    sequence BIGINT NOT NULL CHECK (sequence >= 1),
    day TEXT NOT NULL,
    kind TEXT NOT NULL,
    clock_millis BIGINT NOT NULL,
    clock_counter BIGINT NOT NULL,
    bytes BYTEA NOT NULL,
    PRIMARY KEY (farm, id, hash)
);

CREATE INDEX entry_by_device ON entry (farm, device, sequence, hash);

CREATE TABLE device (
    farm BYTEA NOT NULL REFERENCES farm (farm),
    device BYTEA NOT NULL,
    entry_count BIGINT NOT NULL,
    contiguous BIGINT NOT NULL,
    PRIMARY KEY (farm, device)
);

CREATE TABLE draft (
    farm BYTEA NOT NULL REFERENCES farm (farm),
    key TEXT COLLATE "C" NOT NULL,
    body TEXT NOT NULL,
    person BYTEA NOT NULL,
    updated_millis BIGINT NOT NULL,
    PRIMARY KEY (farm, key)
);

CREATE TABLE person (
    farm BYTEA NOT NULL REFERENCES farm (farm),
    person BYTEA NOT NULL,
    name TEXT,
    PRIMARY KEY (farm, person)
);

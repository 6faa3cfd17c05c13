-- Times are microseconds since 1970 in UTC, 0 for never; the same statements
-- serve SQLite and PostgreSQL.

-- +goose Up
CREATE TABLE counters (name TEXT PRIMARY KEY, n BIGINT NOT NULL);
INSERT INTO counters (name, n) VALUES ('inbox', 0), ('outbox', 0);

CREATE TABLE inbox (
    key         TEXT PRIMARY KEY,
    n           BIGINT NOT NULL UNIQUE,
    service     TEXT NOT NULL,
    room        TEXT NOT NULL,
    thread      TEXT NOT NULL,
    message     TEXT NOT NULL,
    edits       TEXT NOT NULL,
    person      TEXT NOT NULL,
    person_name TEXT NOT NULL,
    said        TEXT NOT NULL,
    extra       TEXT NOT NULL,
    said_at     BIGINT NOT NULL,
    received_at BIGINT NOT NULL,
    state       TEXT NOT NULL DEFAULT 'open',
    tries       BIGINT NOT NULL DEFAULT 0,
    worker      TEXT NOT NULL DEFAULT '',
    lease_until BIGINT NOT NULL DEFAULT 0,
    not_before  BIGINT NOT NULL DEFAULT 0,
    reason      TEXT NOT NULL DEFAULT '',
    done_at     BIGINT NOT NULL DEFAULT 0
);
CREATE INDEX inbox_open ON inbox (n) WHERE state = 'open';
CREATE INDEX inbox_open_room ON inbox (room, n) WHERE state = 'open';
CREATE INDEX inbox_person ON inbox (person);
CREATE INDEX inbox_done ON inbox (done_at);

CREATE TABLE outbox (
    key         TEXT PRIMARY KEY,
    n           BIGINT NOT NULL UNIQUE,
    service     TEXT NOT NULL,
    room        TEXT NOT NULL,
    thread      TEXT NOT NULL,
    event       TEXT NOT NULL,
    message     TEXT NOT NULL,
    replaces    TEXT NOT NULL,
    said        TEXT NOT NULL,
    body        TEXT NOT NULL,
    said_at     BIGINT NOT NULL,
    ref         TEXT NOT NULL DEFAULT '',
    state       TEXT NOT NULL DEFAULT 'open',
    tries       BIGINT NOT NULL DEFAULT 0,
    worker      TEXT NOT NULL DEFAULT '',
    lease_until BIGINT NOT NULL DEFAULT 0,
    not_before  BIGINT NOT NULL DEFAULT 0,
    reason      TEXT NOT NULL DEFAULT '',
    done_at     BIGINT NOT NULL DEFAULT 0
);
CREATE INDEX outbox_open ON outbox (n) WHERE state = 'open';
CREATE INDEX outbox_open_room ON outbox (room, n) WHERE state = 'open';
CREATE INDEX outbox_message ON outbox (room, message, n);
CREATE INDEX outbox_event ON outbox (event);
CREATE INDEX outbox_done ON outbox (done_at);

CREATE TABLE threads (
    room       TEXT NOT NULL,
    name       TEXT NOT NULL,
    version    BIGINT NOT NULL,
    state      TEXT NOT NULL,
    touched_at BIGINT NOT NULL,
    PRIMARY KEY (room, name)
);
CREATE INDEX threads_touched ON threads (touched_at);

CREATE TABLE profiles (
    room    TEXT PRIMARY KEY,
    version BIGINT NOT NULL,
    state   TEXT NOT NULL
);

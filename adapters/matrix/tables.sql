CREATE TABLE account (
    user_id TEXT PRIMARY KEY,
    device  TEXT NOT NULL DEFAULT '',
    token   TEXT NOT NULL DEFAULT '', -- of access
    place   TEXT NOT NULL DEFAULT '', -- sync token
    avatar  TEXT NOT NULL DEFAULT ''  -- digest of the picture last set
);
-- rooms that are encrypted, or ever were; a row is never removed
CREATE TABLE sealed (
    room_id TEXT PRIMARY KEY,
    told    BOOLEAN NOT NULL DEFAULT false -- that something could not be read
);
-- messages taken and sent: where their threads are
CREATE TABLE known (
    event_id TEXT PRIMARY KEY,
    room_id  TEXT NOT NULL,
    root     TEXT NOT NULL,
    key      TEXT NOT NULL DEFAULT '', -- of the reply sent
    shows    TEXT NOT NULL DEFAULT '', -- the event that this one edits, or itself
    load     BIGINT NOT NULL DEFAULT 0,
    revision BIGINT NOT NULL DEFAULT 0,
    at       BIGINT NOT NULL
);
CREATE INDEX known_key ON known (key);
CREATE INDEX known_root ON known (room_id, root);
-- replies that a homeserver broke off taking, and when
CREATE TABLE doubts (
    key   TEXT PRIMARY KEY,
    since BIGINT NOT NULL
);
-- rooms that the account was asked into and has not answered
CREATE TABLE invited (
    room_id TEXT PRIMARY KEY,
    inviter TEXT NOT NULL,
    since   BIGINT NOT NULL
);
-- encrypted events whose key has not arrived yet
CREATE TABLE waiting (
    event_id TEXT PRIMARY KEY,
    event    TEXT NOT NULL,
    asked    BOOLEAN NOT NULL DEFAULT false, -- the sender, for the key
    since    BIGINT NOT NULL
);
-- events that could not be dealt with
CREATE TABLE aside (
    event_id TEXT PRIMARY KEY,
    room_id  TEXT NOT NULL,
    type     TEXT NOT NULL,
    reason   TEXT NOT NULL,
    at       BIGINT NOT NULL
);

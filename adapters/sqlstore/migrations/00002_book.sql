-- entries is the book; loads is what its entries come to, kept for queries.

-- +goose Up
INSERT INTO counters (name, n) VALUES ('entries', 0);

CREATE TABLE entries (
    room        TEXT NOT NULL,
    load        BIGINT NOT NULL,
    seq         BIGINT NOT NULL,
    n           BIGINT NOT NULL UNIQUE,
    revision    BIGINT NOT NULL,
    act         TEXT NOT NULL,
    person      TEXT NOT NULL,
    person_name TEXT NOT NULL,
    said_at     BIGINT NOT NULL,
    event       TEXT NOT NULL,
    detail      TEXT NOT NULL,
    PRIMARY KEY (room, load, seq)
);
CREATE INDEX entries_person ON entries (room, person, n);

CREATE TABLE loads (
    room         TEXT NOT NULL,
    number       BIGINT NOT NULL,
    state        TEXT NOT NULL,
    in_press     BIGINT NOT NULL,
    press        TEXT NOT NULL,
    glue         TEXT NOT NULL,
    species      TEXT NOT NULL,
    bar_mm       DOUBLE PRECISION,
    thickness_mm DOUBLE PRECISION,
    posted_at    BIGINT NOT NULL,
    touched_at   BIGINT NOT NULL,
    PRIMARY KEY (room, number)
);
CREATE INDEX loads_in_press ON loads (room, number) WHERE in_press = 1;
CREATE INDEX loads_touched ON loads (room, touched_at);
-- wide enough to answer a query for the latest few without the rows themselves
CREATE INDEX loads_glue ON loads (room, glue, number, state, bar_mm, thickness_mm, species);
CREATE INDEX loads_species ON loads (room, species, number, state, bar_mm, thickness_mm, glue);
CREATE INDEX loads_latest ON loads (room, number, state, bar_mm, thickness_mm);
CREATE INDEX loads_bar ON loads (room, bar_mm);
CREATE INDEX loads_thickness ON loads (room, thickness_mm);

CREATE TABLE reminders (
    key         TEXT PRIMARY KEY,
    room        TEXT NOT NULL,
    load        BIGINT NOT NULL,
    kind        TEXT NOT NULL,
    due_at      BIGINT NOT NULL,
    state       TEXT NOT NULL DEFAULT 'open',
    worker      TEXT NOT NULL DEFAULT '',
    lease_until BIGINT NOT NULL DEFAULT 0
);
CREATE INDEX reminders_due ON reminders (due_at) WHERE state = 'open';
CREATE INDEX reminders_load ON reminders (room, load);

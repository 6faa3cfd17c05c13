-- +goose Up
CREATE TABLE leases (
    name        TEXT PRIMARY KEY,
    worker      TEXT NOT NULL,
    lease_until BIGINT NOT NULL
);
CREATE TABLE marks (
    name  TEXT PRIMARY KEY,
    place TEXT NOT NULL
);

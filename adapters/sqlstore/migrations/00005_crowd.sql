-- what becomes of a message where its person says much in a minute; the index
-- finds who someone's messages are as before, and counts those near a time

-- +goose Up
ALTER TABLE inbox ADD COLUMN turnout TEXT NOT NULL DEFAULT 'heard';
DROP INDEX inbox_person;
CREATE INDEX inbox_person ON inbox (person, turnout, said_at);

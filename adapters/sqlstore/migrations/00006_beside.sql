-- what is beside the words, a picture, holds no words up

-- +goose Up
ALTER TABLE outbox ADD COLUMN beside BIGINT NOT NULL DEFAULT 0;
UPDATE outbox SET beside = 1 WHERE state = 'open' AND message LIKE '%/picture';

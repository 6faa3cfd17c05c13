-- what is held, or waits for its check, is rare in a long book

-- +goose Up
CREATE INDEX loads_state ON loads (room, state, number);

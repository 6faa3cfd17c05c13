UPDATE counters SET n = 2 WHERE name = 'inbox';
UPDATE counters SET n = 2 WHERE name = 'outbox';
INSERT INTO inbox (done_at, edits, extra, key, lease_until, message, n, not_before, person, person_name, reason, received_at, room, said, said_at, service, state, thread, tries, worker)
	VALUES (1930392000000000, '', '', 'e1', 0, 'm-e1', 1, 0, 'ann', 'Ann', '', 1930392000000000, 'joinery', '5 strips, 1 in bar', 1930392000000000, 'test', 'answered', 't1', 1, '');
INSERT INTO inbox (done_at, edits, extra, key, lease_until, message, n, not_before, person, person_name, reason, received_at, room, said, said_at, service, state, thread, tries, worker)
	VALUES (0, '', '', 'e2', 0, 'm-e2', 2, 0, 'ann', 'Ann', '', 1930392000000000, 'joinery', '4 checked, bar 1 in', 1930392000000000, 'test', 'open', 't1', 0, '');
INSERT INTO outbox (body, done_at, event, key, lease_until, message, n, not_before, reason, ref, replaces, room, said, said_at, service, state, thread, tries, worker)
	VALUES ('{"b":1}', 1930392000000000, 'e1', 'r1', 0, 'm-r1', 1, 0, '', 'ref-r1', '', 'joinery', 'text of r1', 1930392000000000, 'test', 'sent', 't1', 1, '');
INSERT INTO outbox (body, done_at, event, key, lease_until, message, n, not_before, reason, ref, replaces, room, said, said_at, service, state, thread, tries, worker)
	VALUES ('{"b":1}', 0, 'e1', 'r2', 0, 'm-r2', 2, 0, '', '', '', 'joinery', 'text of r2', 1930392000000000, 'test', 'open', 't1', 0, '');
INSERT INTO threads (name, room, state, touched_at, version)
	VALUES ('t1', 'joinery', '{"q":1}', 1930392000000000, 1);
INSERT INTO profiles (room, state, version)
	VALUES ('joinery', '{"bed":"4x8"}', 1);

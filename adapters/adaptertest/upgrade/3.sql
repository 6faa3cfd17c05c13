INSERT INTO leases (lease_until, name, worker)
	VALUES (1930392060000000, 'sync', 'desk');
INSERT INTO marks (name, place)
	VALUES ('channel', '17.1');

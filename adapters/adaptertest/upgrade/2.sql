UPDATE counters SET n = 9 WHERE name = 'entries';
INSERT INTO entries (act, detail, event, load, n, person, person_name, revision, room, said_at, seq)
	VALUES ('post', '{"plan":{"about":"side","said":{"bar_height_mm":19.05,"glue":"epoxy","species":"walnut","strip_count":5,"strip_thickness_mm":6.35},"assumed":{"vacuum_kpa":84.66},"values":{"press_time_min":{"low":60,"mid":90,"high":120},"side_far_joint_kpa":{"low":40,"mid":90,"high":130}},"verdict":"care","checks":[{"Name":"far joint","Verdict":"care","Reason":"far joint hangs on friction","Figures":{"side_far_joint_kpa":{"low":40,"mid":90,"high":130}}}]},"title":"walnut tops","job":"212","glue_lot":"B7","service":"test","thread":"t1"}', 'e3', 1, 1, 'ann', 'Ann', 1, 'joinery', 1930392000000000, 1);
INSERT INTO entries (act, detail, event, load, n, person, person_name, revision, room, said_at, seq)
	VALUES ('post', '{"plan":{"about":"side","said":{"bar_height_mm":38.1,"glue":"pva","species":"oak","strip_count":5,"strip_thickness_mm":6.35},"assumed":{"vacuum_kpa":84.66},"values":{"press_time_min":{"low":60,"mid":90,"high":120},"side_far_joint_kpa":{"low":40,"mid":90,"high":130}},"verdict":"care","checks":[{"Name":"far joint","Verdict":"care","Reason":"far joint hangs on friction","Figures":{"side_far_joint_kpa":{"low":40,"mid":90,"high":130}}}]},"from":1,"service":"test","thread":"t1"}', 'e4', 2, 2, 'ann', 'Ann', 1, 'joinery', 1930392060000000, 1);
INSERT INTO entries (act, detail, event, load, n, person, person_name, revision, room, said_at, seq)
	VALUES ('check', '{"measured":{"bar_height_mm":19,"strip_thickness_mm":6.4},"compared":[{"field":"bar_height_mm","planned":19.05,"measured":19,"tolerance":0.5,"agrees":true},{"field":"strip_thickness_mm","planned":6.35,"measured":6.4,"tolerance":0.5,"agrees":true}],"agrees":true}', 'e5', 1, 3, 'ben', 'Ben', 1, 'joinery', 1930392120000000, 2);
INSERT INTO entries (act, detail, event, load, n, person, person_name, revision, room, said_at, seq)
	VALUES ('check', '{"measured":{"bar_height_mm":25,"strip_thickness_mm":6.4},"compared":[{"field":"bar_height_mm","planned":38.1,"measured":25,"tolerance":0.762,"agrees":false},{"field":"strip_thickness_mm","planned":6.35,"measured":6.4,"tolerance":0.5,"agrees":true}]}', 'e5', 2, 4, 'ben', 'Ben', 1, 'joinery', 1930392180000000, 2);
INSERT INTO entries (act, detail, event, load, n, person, person_name, revision, room, said_at, seq)
	VALUES ('correct', '{"plan":{"about":"side","said":{"bar_height_mm":25.4,"glue":"epoxy","species":"walnut","strip_count":5,"strip_thickness_mm":6.35},"assumed":{"vacuum_kpa":84.66},"values":{"press_time_min":{"low":60,"mid":90,"high":120},"side_far_joint_kpa":{"low":40,"mid":90,"high":130}},"verdict":"care","checks":[{"Name":"far joint","Verdict":"care","Reason":"far joint hangs on friction","Figures":{"side_far_joint_kpa":{"low":40,"mid":90,"high":130}}}]},"note":"1 in bar"}', 'e6', 1, 5, 'ann', 'Ann', 2, 'joinery', 1930392240000000, 3);
INSERT INTO entries (act, detail, event, load, n, person, person_name, revision, room, said_at, seq)
	VALUES ('check', '{"measured":{"bar_height_mm":25,"strip_thickness_mm":6.5},"compared":[{"field":"bar_height_mm","planned":25.4,"measured":25,"tolerance":0.508,"agrees":true},{"field":"strip_thickness_mm","planned":6.35,"measured":6.5,"tolerance":0.5,"agrees":true}],"agrees":true}', 'e5', 1, 6, 'ben', 'Ben', 2, 'joinery', 1930392300000000, 4);
INSERT INTO entries (act, detail, event, load, n, person, person_name, revision, room, said_at, seq)
	VALUES ('hold', '{"note":"mat missing"}', 'e7', 1, 7, 'ann', 'Ann', 2, 'joinery', 1930392360000000, 5);
INSERT INTO entries (act, detail, event, load, n, person, person_name, revision, room, said_at, seq)
	VALUES ('clear', '{}', 'e8', 1, 8, 'ben', 'Ben', 2, 'joinery', 1930392420000000, 6);
INSERT INTO entries (act, detail, event, load, n, person, person_name, revision, room, said_at, seq)
	VALUES ('in', '{"press":"2","when":"2031-03-04T12:08:00Z"}', 'e9', 1, 9, 'ben', 'Ben', 2, 'joinery', 1930392540000000, 7);
INSERT INTO loads (bar_mm, glue, in_press, number, posted_at, press, room, species, state, thickness_mm, touched_at)
	VALUES (38.1, 'pva', 0, 2, 1930392060000000, '', 'joinery', 'oak', 'posted', 6.35, 1930392180000000);
INSERT INTO loads (bar_mm, glue, in_press, number, posted_at, press, room, species, state, thickness_mm, touched_at)
	VALUES (25.4, 'epoxy', 1, 1, 1930392000000000, '2', 'joinery', 'walnut', 'pressing', 6.35, 1930392540000000);
INSERT INTO reminders (due_at, key, kind, lease_until, load, room, state, worker)
	VALUES (1930399680000000, 'joinery/1/7/time up', 'time up', 0, 1, 'joinery', 'open', '');
INSERT INTO reminders (due_at, key, kind, lease_until, load, room, state, worker)
	VALUES (1930486080000000, 'joinery/1/7/ask result', 'ask result', 0, 1, 'joinery', 'open', '');

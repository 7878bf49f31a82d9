-- A workspace of format 1, dumped from one that the first version's store wrote (see Fixtures for what is in it).
PRAGMA application_id = 1400138861;
PRAGMA user_version = 1;
BEGIN TRANSACTION;
CREATE TABLE batch (
    session INTEGER NOT NULL REFERENCES session,
    number INTEGER NOT NULL,
    next_sequence INTEGER NOT NULL,
    until_nanos INTEGER NOT NULL,
    low_nanos INTEGER,
    high_nanos INTEGER,
    PRIMARY KEY (session, number)
) STRICT, WITHOUT ROWID;
INSERT INTO "batch" VALUES(1,0,20,9,0,900000009);
INSERT INTO "batch" VALUES(2,0,20,1000000000,0,900000009);
INSERT INTO "batch" VALUES(2,1,40,2000000000,1000000031,1900000040);
CREATE TABLE channel_reading (
    session INTEGER NOT NULL,
    batch INTEGER NOT NULL,
    part INTEGER NOT NULL,
    position INTEGER NOT NULL,
    role TEXT NOT NULL,
    value REAL,
    standard_uncertainty REAL,
    settle_uncertainty REAL,
    zero_offset REAL,
    unit TEXT NOT NULL,
    from_nanos INTEGER NOT NULL,
    to_nanos INTEGER NOT NULL,
    settled INTEGER NOT NULL,
    reason TEXT NOT NULL,
    odd TEXT,
    PRIMARY KEY (session, batch, part, position),
    FOREIGN KEY (session, batch, part) REFERENCES reading
) STRICT, WITHOUT ROWID;
INSERT INTO "channel_reading" VALUES(1,0,0,0,'INLET',6.71234567890123390299e+00,3.00000000000000044408e-01,NULL,NULL,'[in_i''H2O]{60degF}',-19999999991,9,0,'not settled: could still move','{"settle_uncertainty":"NaN","zero_offset":"-0.0"}');
INSERT INTO "channel_reading" VALUES(1,0,0,1,'SUPPLY',NULL,0.0,9.99988867182683e-321,0.0,'Cel',0,9,1,'settled','{"value":"-0.0"}');
CREATE TABLE event (
    session INTEGER NOT NULL REFERENCES session,
    sequence INTEGER NOT NULL,
    kind INTEGER NOT NULL,
    time_nanos INTEGER NOT NULL,
    probe INTEGER,
    bytes BLOB,
    detail TEXT,
    PRIMARY KEY (session, sequence),
    FOREIGN KEY (session, probe) REFERENCES probe
) STRICT, WITHOUT ROWID;
INSERT INTO "event" VALUES(1,0,1,1,0,NULL,'{"change":"UP","words":"opened"}');
INSERT INTO "event" VALUES(1,1,0,2,0,X'00FF7F800D0A',NULL);
INSERT INTO "event" VALUES(1,2,1,3,1,NULL,'{"change":"UP","words":"words of UP"}');
INSERT INTO "event" VALUES(1,3,1,3,1,NULL,'{"change":"LOST","words":"words of LOST"}');
INSERT INTO "event" VALUES(1,4,1,3,1,NULL,'{"change":"BACK","words":"words of BACK"}');
INSERT INTO "event" VALUES(1,5,1,3,1,NULL,'{"change":"OVERRUN","words":"words of OVERRUN"}');
INSERT INTO "event" VALUES(1,6,1,3,1,NULL,'{"change":"ENDED","words":"words of ENDED"}');
INSERT INTO "event" VALUES(1,7,2,4,NULL,NULL,'{"kind":"confirm","step":"plate"}');
INSERT INTO "event" VALUES(1,8,2,4,NULL,NULL,'{"kind":"adjust","step":"left-low"}');
INSERT INTO "event" VALUES(1,9,2,4,NULL,NULL,'{"kind":"cap-on","step":"left-low"}');
INSERT INTO "event" VALUES(1,10,2,4,NULL,NULL,'{"kind":"take-now","step":"found-low","reason":"burner hunts, \"wind\""}');
INSERT INTO "event" VALUES(1,11,2,4,NULL,NULL,'{"kind":"skip","step":"shut","reason":""}');
INSERT INTO "event" VALUES(1,12,2,4,NULL,NULL,'{"kind":"repeat","step":"zero"}');
INSERT INTO "event" VALUES(1,13,2,4,NULL,NULL,'{"kind":"tick","step":"close","item":"All other appliances relit and working","done":true}');
INSERT INTO "event" VALUES(1,14,2,4,NULL,NULL,'{"kind":"tick","step":"close","item":"All other appliances relit and working","done":false}');
INSERT INTO "event" VALUES(1,15,2,4,NULL,NULL,'{"kind":"note","step":"found-high","text":"two lines\nand 漢字"}');
INSERT INTO "event" VALUES(1,16,2,4,NULL,NULL,'{"kind":"plate","plate":{"appliance":"two-stage furnace, attic","fuel":"NATURAL_GAS","stages":[{"key":"low","name":"low fire","manifoldTarget":1.6,"manifoldTolerance":0.30000000000000004,"unit":"[in_i''H2O]","inputBtuPerHour":52000.0},{"key":"high","name":"high fire","manifoldTarget":3.5,"manifoldTolerance":0.3,"unit":"[in_i''H2O]{4Cel}","inputBtuPerHour":"NaN"}],"inlet":{"lower":4.5,"upper":"Infinity","unit":"[in_i''H2O]{20Cel}","source":"plate"},"rise":{"lower":-0.0,"upper":60.0,"unit":"difference [degF]","source":"plate"}}}');
INSERT INTO "event" VALUES(1,17,2,4,NULL,NULL,'{"kind":"person","name":"R. Okafor"}');
INSERT INTO "event" VALUES(1,18,3,5,NULL,NULL,'{"slept":true,"amountNanos":3600000000000,"words":"slept for an hour"}');
INSERT INTO "event" VALUES(1,19,3,9223372036854775807,NULL,NULL,'{"slept":false,"amountNanos":-3600000000000,"words":"set back by an hour"}');
INSERT INTO "event" VALUES(2,0,0,0,0,X'5030202B312E323334202B332E3531320D0A',NULL);
INSERT INTO "event" VALUES(2,1,0,100000001,0,X'5031202B312E323334202B332E3531320D0A',NULL);
INSERT INTO "event" VALUES(2,2,0,200000002,0,X'5032202B312E323334202B332E3531320D0A',NULL);
INSERT INTO "event" VALUES(2,3,0,300000003,0,X'5033202B312E323334202B332E3531320D0A',NULL);
INSERT INTO "event" VALUES(2,4,0,400000004,0,X'5034202B312E323334202B332E3531320D0A',NULL);
INSERT INTO "event" VALUES(2,5,0,500000005,0,X'5035202B312E323334202B332E3531320D0A',NULL);
INSERT INTO "event" VALUES(2,6,0,600000006,0,X'5036202B312E323334202B332E3531320D0A',NULL);
INSERT INTO "event" VALUES(2,7,0,700000007,0,X'5037202B312E323334202B332E3531320D0A',NULL);
INSERT INTO "event" VALUES(2,8,0,800000008,0,X'5038202B312E323334202B332E3531320D0A',NULL);
INSERT INTO "event" VALUES(2,9,0,900000009,0,X'5039202B312E323334202B332E3531320D0A',NULL);
INSERT INTO "event" VALUES(2,10,0,0,1,X'5030202B312E323334202B332E3531320D0A',NULL);
INSERT INTO "event" VALUES(2,11,0,100000001,1,X'5031202B312E323334202B332E3531320D0A',NULL);
INSERT INTO "event" VALUES(2,12,0,200000002,1,X'5032202B312E323334202B332E3531320D0A',NULL);
INSERT INTO "event" VALUES(2,13,0,300000003,1,X'5033202B312E323334202B332E3531320D0A',NULL);
INSERT INTO "event" VALUES(2,14,0,400000004,1,X'5034202B312E323334202B332E3531320D0A',NULL);
INSERT INTO "event" VALUES(2,15,0,500000005,1,X'5035202B312E323334202B332E3531320D0A',NULL);
INSERT INTO "event" VALUES(2,16,0,600000006,1,X'5036202B312E323334202B332E3531320D0A',NULL);
INSERT INTO "event" VALUES(2,17,0,700000007,1,X'5037202B312E323334202B332E3531320D0A',NULL);
INSERT INTO "event" VALUES(2,18,0,800000008,1,X'5038202B312E323334202B332E3531320D0A',NULL);
INSERT INTO "event" VALUES(2,19,0,900000009,1,X'5039202B312E323334202B332E3531320D0A',NULL);
INSERT INTO "event" VALUES(2,20,0,1000000031,0,X'503130202B312E323334202B332E3531320D0A',NULL);
INSERT INTO "event" VALUES(2,21,0,1100000032,0,X'503131202B312E323334202B332E3531320D0A',NULL);
INSERT INTO "event" VALUES(2,22,0,1200000033,0,X'503132202B312E323334202B332E3531320D0A',NULL);
INSERT INTO "event" VALUES(2,23,0,1300000034,0,X'503133202B312E323334202B332E3531320D0A',NULL);
INSERT INTO "event" VALUES(2,24,0,1400000035,0,X'503134202B312E323334202B332E3531320D0A',NULL);
INSERT INTO "event" VALUES(2,25,0,1500000036,0,X'503135202B312E323334202B332E3531320D0A',NULL);
INSERT INTO "event" VALUES(2,26,0,1600000037,0,X'503136202B312E323334202B332E3531320D0A',NULL);
INSERT INTO "event" VALUES(2,27,0,1700000038,0,X'503137202B312E323334202B332E3531320D0A',NULL);
INSERT INTO "event" VALUES(2,28,0,1800000039,0,X'503138202B312E323334202B332E3531320D0A',NULL);
INSERT INTO "event" VALUES(2,29,0,1900000040,0,X'503139202B312E323334202B332E3531320D0A',NULL);
INSERT INTO "event" VALUES(2,30,0,1000000031,1,X'503130202B312E323334202B332E3531320D0A',NULL);
INSERT INTO "event" VALUES(2,31,0,1100000032,1,X'503131202B312E323334202B332E3531320D0A',NULL);
INSERT INTO "event" VALUES(2,32,0,1200000033,1,X'503132202B312E323334202B332E3531320D0A',NULL);
INSERT INTO "event" VALUES(2,33,0,1300000034,1,X'503133202B312E323334202B332E3531320D0A',NULL);
INSERT INTO "event" VALUES(2,34,0,1400000035,1,X'503134202B312E323334202B332E3531320D0A',NULL);
INSERT INTO "event" VALUES(2,35,0,1500000036,1,X'503135202B312E323334202B332E3531320D0A',NULL);
INSERT INTO "event" VALUES(2,36,0,1600000037,1,X'503136202B312E323334202B332E3531320D0A',NULL);
INSERT INTO "event" VALUES(2,37,0,1700000038,1,X'503137202B312E323334202B332E3531320D0A',NULL);
INSERT INTO "event" VALUES(2,38,0,1800000039,1,X'503138202B312E323334202B332E3531320D0A',NULL);
INSERT INTO "event" VALUES(2,39,0,1900000040,1,X'503139202B312E323334202B332E3531320D0A',NULL);
CREATE TABLE probe (
    session INTEGER NOT NULL REFERENCES session,
    position INTEGER NOT NULL,
    name TEXT NOT NULL,
    scheme TEXT NOT NULL,
    path TEXT NOT NULL,
    profile TEXT NOT NULL REFERENCES profile,
    roles TEXT NOT NULL,
    samples INTEGER NOT NULL DEFAULT 0,
    PRIMARY KEY (session, position)
) STRICT, WITHOUT ROWID;
INSERT INTO "probe" VALUES(1,0,'gauge','rig','gauge','9b552459838e6146a8fbbfbb93d8afac8e9062001ebf7daf688aa822ebdd46d8','{"port-1":"INLET","port-2":"MANIFOLD"}',10);
INSERT INTO "probe" VALUES(1,1,'air','serial','/dev/ttyS1','70af7b631139c8b331b930c8a4c3034f61205b5511e0cb225f1f0f79a15b251a','{"left":"SUPPLY","right":"RETURN"}',0);
INSERT INTO "probe" VALUES(2,0,'gauge','rig','gauge','9b552459838e6146a8fbbfbb93d8afac8e9062001ebf7daf688aa822ebdd46d8','{"port-1":"INLET","port-2":"MANIFOLD"}',40);
INSERT INTO "probe" VALUES(2,1,'air','serial','/dev/ttyS1','70af7b631139c8b331b930c8a4c3034f61205b5511e0cb225f1f0f79a15b251a','{"left":"SUPPLY","right":"RETURN"}',40);
CREATE TABLE profile (
    digest TEXT PRIMARY KEY,
    id TEXT NOT NULL,
    name TEXT NOT NULL,
    text TEXT NOT NULL
) STRICT, WITHOUT ROWID;
INSERT INTO "profile" VALUES('70af7b631139c8b331b930c8a4c3034f61205b5511e0cb225f1f0f79a15b251a','air','Air probes','air|Air probes|false|left,right|[degF]');
INSERT INTO "profile" VALUES('9b552459838e6146a8fbbfbb93d8afac8e9062001ebf7daf688aa822ebdd46d8','gauge','Two-port gauge','gauge|Two-port gauge|true|port-1,port-2|[in_i''H2O]');
CREATE TABLE reading (
    session INTEGER NOT NULL,
    batch INTEGER NOT NULL,
    part INTEGER NOT NULL,
    step TEXT NOT NULL,
    purpose TEXT NOT NULL,
    time_nanos INTEGER NOT NULL,
    by_hand INTEGER NOT NULL,
    hand_reason TEXT NOT NULL,
    PRIMARY KEY (session, batch, part),
    FOREIGN KEY (session, batch) REFERENCES batch
) STRICT, WITHOUT ROWID;
INSERT INTO "reading" VALUES(1,0,0,'found-low','found',9,1,'by hand');
CREATE TABLE rejected (
    session INTEGER NOT NULL,
    batch INTEGER NOT NULL,
    part INTEGER NOT NULL,
    probe INTEGER NOT NULL,
    time_nanos INTEGER NOT NULL,
    stream_offset INTEGER NOT NULL,
    reason TEXT NOT NULL,
    PRIMARY KEY (session, batch, part),
    FOREIGN KEY (session, batch) REFERENCES batch
) STRICT, WITHOUT ROWID;
INSERT INTO "rejected" VALUES(1,0,0,1,7,40,'checksum');
CREATE TABLE sample_block (
    session INTEGER NOT NULL,
    batch INTEGER NOT NULL,
    probe INTEGER NOT NULL,
    channel INTEGER NOT NULL,
    part INTEGER NOT NULL,
    block BLOB NOT NULL,
    PRIMARY KEY (session, batch, probe, channel, part),
    FOREIGN KEY (session, batch) REFERENCES batch
) STRICT, WITHOUT ROWID;
INSERT INTO "sample_block" VALUES(1,0,0,1,0,X'000A000000000000000000000001E1F50501E1F50501E1F50501E1F50501E1F50501E1F50501E1F50501E1F50501E1F505CDCCCCCCCCCC0C409557D0F410CD0C400338151B55CD0C402DCFDC3D99CD0C400695685BDDCD0C40CF23FA7121CE0C408243D37F65CE0C4040F53583A9CE0C40B97E647AEDCE0C409C75A16331CF0C40');
INSERT INTO "sample_block" VALUES(2,0,0,0,0,X'000A000000000000000000000001E1F50501E1F50501E1F50501E1F50501E1F50501E1F50501E1F50501E1F50501E1F5050000000000000C40C88A032844000C40366B484E88000C4060021071CC000C4039C89B8E10010C4002572DA554010C40B57606B398010C40732869B6DC010C40ECB197AD20020C40CFA8D49664020C40');
INSERT INTO "sample_block" VALUES(2,0,0,1,1,X'000A000000000000000000000001E1F50501E1F50501E1F50501E1F50501E1F50501E1F50501E1F50501E1F50501E1F505CDCCCCCCCCCC0C409557D0F410CD0C400338151B55CD0C402DCFDC3D99CD0C400695685BDDCD0C40CF23FA7121CE0C408243D37F65CE0C4040F53583A9CE0C40B97E647AEDCE0C409C75A16331CF0C40');
INSERT INTO "sample_block" VALUES(2,0,1,0,2,X'000A000000000000000000000001E1F50501E1F50501E1F50501E1F50501E1F50501E1F50501E1F50501E1F50501E1F505000000000000124064C50114220012409B3524274400124030018838660012401DE44D478800124081AB9652AA0012405B3B8359CC0012403994345BEE001240F6D8CB561001124067546A4B32011240');
INSERT INTO "sample_block" VALUES(2,0,1,1,3,X'000A000000000000000000000001E1F50501E1F50501E1F50501E1F50501E1F50501E1F50501E1F50501E1F50501E1F5056666666666661240CA2B687A88661240019C8A8DAA6612409667EE9ECC661240834AB4ADEE661240E711FDB810671240C1A1E9BF326712409FFA9AC1546712405C3F32BD76671240CDBAD0B198671240');
INSERT INTO "sample_block" VALUES(2,1,0,0,0,X'000A0000001FCA9A3B0000000001E1F50501E1F50501E1F50501E1F50501E1F50501E1F50501E1F50501E1F50501E1F50528FE6270A8020C40CA098638EC020C40B19581ED2F030C4062E9998D73030C4040D51317B7030C40F0BD3488FA030C40A2A742DF3D040C406B41841A81040C4089F04038C4040C40B4DBC03607050C40');
INSERT INTO "sample_block" VALUES(2,1,0,1,1,X'000A0000001FCA9A3B0000000001E1F50501E1F50501E1F50501E1F50501E1F50501E1F50501E1F50501E1F50501E1F505F5CA2F3D75CF0C4097D65205B9CF0C407E624EBAFCCF0C402FB6665A40D00C400DA2E0E383D00C40BD8A0155C7D00C406F740FAC0AD10C40380E51E74DD10C4056BD0D0591D10C4081A88D03D4D10C40');
INSERT INTO "sample_block" VALUES(2,1,1,0,2,X'000A0000001FCA9A3B0000000001E1F50501E1F50501E1F50501E1F50501E1F50501E1F50501E1F50501E1F50501E1F505147F313854011240E504431C76011240D9CAC0F697011240B1F4CCC6B9011240A0EA898BDB011240F85E1A44FD011240D153A1EF1E021240B520428D400212404578201C62021240DA6D609B83021240');
INSERT INTO "sample_block" VALUES(2,1,1,1,3,X'000A0000001FCA9A3B0000000001E1F50501E1F50501E1F50501E1F50501E1F50501E1F50501E1F50501E1F50501E1F5057AE5979EBA6712404B6BA982DC6712403F31275DFE671240175B332D206812400651F0F1416812405EC580AA6368124037BA0756856812401B87A8F3A6681240ABDE8682C868124040D4C601EA681240');
CREATE TABLE session (
    number INTEGER PRIMARY KEY AUTOINCREMENT,
    key TEXT NOT NULL UNIQUE,
    title TEXT NOT NULL,
    started_at TEXT NOT NULL,
    zone TEXT NOT NULL,
    pressure_unit TEXT NOT NULL,
    temperature_unit TEXT NOT NULL,
    simulated INTEGER NOT NULL,
    plan TEXT,
    plate TEXT,
    version TEXT NOT NULL,
    ended_nanos INTEGER
) STRICT;
INSERT INTO "session" VALUES(1,'job','Ash Lane 12, üpstairs "north"','2026-03-14T09:31:07.123456789Z','Europe/Berlin','[in_i''H2O]{60degF}','Cel',1,'{"key":"two-stage-natural-gas","title":"two-stage furnace, natural gas","steps":[{"key":"plate","kind":"PLATE","stage":"","group":"","name":"Plate","title":"Rating plate","instruction":"Check every number below against the rating plate","caution":"The rating plate and the local code override every customary number. Work on gas is for a licensed or registered person.","press":"The plate says so","required":[],"ticks":[]},{"key":"probes","kind":"PROBES","stage":"","group":"","name":"Probes","title":"Probes on their places","instruction":"Gas off, power off, open the ports, hang the gauge, put the air probes in the ducts","caution":"Gas off at the manual valve and power off before a test port is opened. Smell of gas: no switches, ventilate, leave, call.","press":"Probes are in place","required":[],"ticks":[]},{"key":"zero","kind":"ZERO","stage":"","group":"","name":"Zero","title":"Zero, ports open to air","instruction":"Leave both hoses open to the air, the gauge lying as it will be used","caution":"A zero taken with pressure on spoils every reading after it. Gas stays off at the manual valve.","press":"Both ports are open to air","required":["INLET","MANIFOLD"],"ticks":[]},{"key":"lock-up","kind":"LOCK_UP","stage":"","group":"Supply","name":"lock-up","title":"Supply at lock-up","instruction":"Hoses on their taps, gas on, nothing firing: read the inlet at rest","caution":"An inlet that keeps climbing with nothing firing is a regulator that does not lock up: shut off and call the supplier.","press":"Gas is on, nothing fires","required":["INLET","MANIFOLD"],"ticks":[]},{"key":"found-low","kind":"FOUND","stage":"low","group":"As found","name":"low fire","title":"As found, low fire","instruction":"Call for low fire only. Read it as you found it: touch no screw.","caution":"Hot flue, live terminals, moving blower. The plate''s input is never exceeded; the maker''s instructions and local code come first.","press":"Burner is on low fire","required":["INLET","MANIFOLD","SUPPLY","RETURN"],"ticks":[]},{"key":"found-high","kind":"FOUND","stage":"high","group":"As found","name":"high fire","title":"As found, high fire","instruction":"Call for high fire. Read it as you found it: touch no screw.","caution":"Hot flue, live terminals, moving blower. The plate''s input is never exceeded; the maker''s instructions and local code come first.","press":"Burner is on high fire","required":["INLET","MANIFOLD","SUPPLY","RETURN"],"ticks":[]},{"key":"left-low","kind":"LEFT","stage":"low","group":"As left","name":"low fire","title":"As left, low fire","instruction":"Bring the manifold to its target at low fire, then put the cap back","caution":"A sealed air/gas-ratio valve is set only with a combustion analysis and the maker''s say-so. Outside the adjusting window, change orifices, not pressure.","press":"Cap is on: check it stays","required":["INLET","MANIFOLD","SUPPLY","RETURN"],"ticks":[]},{"key":"left-high","kind":"LEFT","stage":"high","group":"As left","name":"high fire","title":"As left, high fire","instruction":"Bring the manifold to its target at high fire, then put the cap back","caution":"A sealed air/gas-ratio valve is set only with a combustion analysis and the maker''s say-so. Outside the adjusting window, change orifices, not pressure.","press":"Cap is on: check it stays","required":["INLET","MANIFOLD","SUPPLY","RETURN"],"ticks":[]},{"key":"shut","kind":"SHUT","stage":"","group":"Valve","name":"shut","title":"Valve shut","instruction":"End the call for heat: the manifold must fall at once and stay at nothing","caution":"A manifold at zero does not prove a tight valve: the burners are open holes. Only a let-by test with the trapped inlet does.","press":"The call has ended","required":["MANIFOLD"],"ticks":[]},{"key":"close","kind":"CLOSE","stage":"","group":"","name":"Close","title":"Closing up","instruction":"Gas off, hoses off the taps and open to air: read the zero again, then close up and leak-test","caution":"Close the ports and leak-test them with the burner firing, with solution or a detector, never a flame.","press":"Both ports are open to air","required":["INLET","MANIFOLD"],"ticks":["Ports closed and caps on, leak-tested with the burner firing","Thermostat and staging put back to normal","All other appliances relit and working"]},{"key":"record","kind":"RECORD","stage":"","group":"","name":"Record","title":"Record","instruction":"Read the record through, say who you are, and hand it over","caution":"The record says what was measured. It does not authorise anything, and it lists what it does not cover.","press":"Make the record","required":[],"ticks":[]}]}','{"appliance":"two-stage furnace, attic","fuel":"NATURAL_GAS","stages":[{"key":"low","name":"low fire","manifoldTarget":1.6,"manifoldTolerance":0.30000000000000004,"unit":"[in_i''H2O]","inputBtuPerHour":52000.0},{"key":"high","name":"high fire","manifoldTarget":3.5,"manifoldTolerance":0.3,"unit":"[in_i''H2O]{4Cel}","inputBtuPerHour":"NaN"}],"inlet":{"lower":4.5,"upper":"Infinity","unit":"[in_i''H2O]{20Cel}","source":"plate"},"rise":{"lower":-0.0,"upper":60.0,"unit":"difference [degF]","source":"plate"}}','0.1.0-test',10);
INSERT INTO "session" VALUES(2,'log','Log log','2026-03-14T09:31:00.000000001Z','America/Denver','[in_i''H2O]','[degF]',1,NULL,NULL,'0.1.0-test',NULL);
DELETE FROM "sqlite_sequence";
INSERT INTO "sqlite_sequence" VALUES('session',2);
COMMIT;

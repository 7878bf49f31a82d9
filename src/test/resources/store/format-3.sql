-- A workspace of format 3, dumped from one that the store of that format wrote (see FormerFormatTest for what is in it).
PRAGMA application_id = 1400138861;
PRAGMA user_version = 3;
BEGIN TRANSACTION;
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
, keeps_bytes INTEGER NOT NULL DEFAULT 1) STRICT;
INSERT INTO session VALUES(1,'job','Ash Lane 12, üpstairs "north"','2026-03-14T09:31:07.123456789Z','Europe/Berlin','[in_i''H2O]{60degF}','Cel',1,'{"key":"two-stage-natural-gas","title":"two-stage furnace, natural gas","fuels":["NATURAL_GAS"],"stages":["low","high"],"steps":[{"key":"plate","kind":"PLATE","stage":"","group":"","name":"Plate","title":"Rating plate","instruction":"Check every number below against the rating plate","caution":"The rating plate and the local code override every customary number. Work on gas is for a licensed or registered person.","press":"The plate says so","required":[],"ticks":[],"settleSeconds":0.0,"holdSeconds":0.0,"limits":[]},{"key":"probes","kind":"PROBES","stage":"","group":"","name":"Probes","title":"Probes on their places","instruction":"Gas off, power off, open the ports, hang the gauge, put the air probes in the ducts","caution":"Gas off at the manual valve and power off before a test port is opened. Smell of gas: no switches, ventilate, leave, call.","press":"Probes are in place","required":[],"ticks":[],"settleSeconds":0.0,"holdSeconds":0.0,"limits":[]},{"key":"zero","kind":"ZERO","stage":"","group":"","name":"Zero","title":"Zero, ports open to air","instruction":"Leave both hoses open to the air, the gauge lying as it will be used","caution":"A zero taken with pressure on spoils every reading after it. Gas stays off at the manual valve.","press":"Both ports are open to air","required":["INLET","MANIFOLD"],"ticks":[],"settleSeconds":0.0,"holdSeconds":0.0,"limits":[]},{"key":"lock-up","kind":"LOCK_UP","stage":"","group":"Supply","name":"lock-up","title":"Supply at lock-up","instruction":"Hoses on their taps, gas on, nothing firing: read the inlet at rest","caution":"An inlet that keeps climbing with nothing firing is a regulator that does not lock up: shut off and call the supplier.","press":"Gas is on, nothing fires","required":["INLET","MANIFOLD"],"ticks":[],"settleSeconds":0.0,"holdSeconds":0.0,"limits":[]},{"key":"found-low","kind":"FOUND","stage":"low","group":"As found","name":"low fire","title":"As found, low fire","instruction":"Call for low fire only. Read it as you found it: touch no screw.","caution":"Hot flue, live terminals, moving blower. The plate''s input is never exceeded; the maker''s instructions and local code come first.","press":"Burner is on low fire","required":["INLET","MANIFOLD","SUPPLY","RETURN"],"ticks":[],"settleSeconds":0.0,"holdSeconds":0.0,"limits":[]},{"key":"found-high","kind":"FOUND","stage":"high","group":"As found","name":"high fire","title":"As found, high fire","instruction":"Call for high fire. Read it as you found it: touch no screw.","caution":"Hot flue, live terminals, moving blower. The plate''s input is never exceeded; the maker''s instructions and local code come first.","press":"Burner is on high fire","required":["INLET","MANIFOLD","SUPPLY","RETURN"],"ticks":[],"settleSeconds":0.0,"holdSeconds":0.0,"limits":[]},{"key":"left-low","kind":"LEFT","stage":"low","group":"As left","name":"low fire","title":"As left, low fire","instruction":"Bring the manifold to its target at low fire, then put the cap back","caution":"A sealed air/gas-ratio valve is set only with a combustion analysis and the maker''s say-so. Outside the adjusting window, change orifices, not pressure.","press":"Cap is on: check it stays","required":["INLET","MANIFOLD","SUPPLY","RETURN"],"ticks":[],"settleSeconds":0.0,"holdSeconds":0.0,"limits":[]},{"key":"left-high","kind":"LEFT","stage":"high","group":"As left","name":"high fire","title":"As left, high fire","instruction":"Bring the manifold to its target at high fire, then put the cap back","caution":"A sealed air/gas-ratio valve is set only with a combustion analysis and the maker''s say-so. Outside the adjusting window, change orifices, not pressure.","press":"Cap is on: check it stays","required":["INLET","MANIFOLD","SUPPLY","RETURN"],"ticks":[],"settleSeconds":0.0,"holdSeconds":0.0,"limits":[]},{"key":"shut","kind":"SHUT","stage":"","group":"Valve","name":"shut","title":"Valve shut","instruction":"End the call for heat: the manifold must fall at once and stay at nothing","caution":"A manifold at zero does not prove a tight valve: the burners are open holes. Only a let-by test with the trapped inlet does.","press":"The call has ended","required":["MANIFOLD"],"ticks":[],"settleSeconds":0.0,"holdSeconds":0.0,"limits":[]},{"key":"close","kind":"CLOSE","stage":"","group":"","name":"Close","title":"Closing up","instruction":"Gas off, hoses off the taps and open to air: read the zero again, then close up and leak-test","caution":"Close the ports and leak-test them with the burner firing, with solution or a detector, never a flame.","press":"Both ports are open to air","required":["INLET","MANIFOLD"],"ticks":["Ports closed and caps on, leak-tested with the burner firing","Thermostat and staging put back to normal","All other appliances relit and working"],"settleSeconds":0.0,"holdSeconds":0.0,"limits":[]},{"key":"record","kind":"RECORD","stage":"","group":"","name":"Record","title":"Record","instruction":"Read the record through, say who you are, and hand it over","caution":"The record says what was measured. It does not authorise anything, and it lists what it does not cover.","press":"Make the record","required":[],"ticks":[],"settleSeconds":0.0,"holdSeconds":0.0,"limits":[]}]}','{"appliance":"two-stage furnace, attic","fuel":"NATURAL_GAS","stages":[{"key":"low","name":"low fire","manifoldTarget":1.6,"manifoldTolerance":0.30000000000000004,"unit":"[in_i''H2O]","inputBtuPerHour":52000.0},{"key":"high","name":"high fire","manifoldTarget":3.5,"manifoldTolerance":0.3,"unit":"[in_i''H2O]{4Cel}","inputBtuPerHour":"NaN"}],"inlet":{"lower":4.5,"upper":"Infinity","unit":"[in_i''H2O]{20Cel}","source":"plate"},"rise":{"lower":-0.0,"upper":60.0,"unit":"difference [degF]","source":"plate"}}','0.1.0-test',9,1);
INSERT INTO session VALUES(2,'log','Log log','2026-03-14T09:31:00.000000001Z','America/Denver','[in_i''H2O]','[degF]',1,NULL,NULL,'0.1.0-test',NULL,1);
CREATE TABLE profile (
    digest TEXT PRIMARY KEY,
    id TEXT NOT NULL,
    name TEXT NOT NULL,
    text TEXT NOT NULL
) STRICT, WITHOUT ROWID;
INSERT INTO profile VALUES('70af7b631139c8b331b930c8a4c3034f61205b5511e0cb225f1f0f79a15b251a','air','Air probes','air|Air probes|false|left,right|[degF]');
INSERT INTO profile VALUES('9b552459838e6146a8fbbfbb93d8afac8e9062001ebf7daf688aa822ebdd46d8','gauge','Two-port gauge','gauge|Two-port gauge|true|port-1,port-2|[in_i''H2O]');
CREATE TABLE probe (
    session INTEGER NOT NULL REFERENCES session,
    position INTEGER NOT NULL,
    name TEXT NOT NULL,
    scheme TEXT NOT NULL,
    path TEXT NOT NULL,
    profile TEXT NOT NULL REFERENCES profile,
    roles TEXT NOT NULL,
    samples INTEGER NOT NULL DEFAULT 0, identity TEXT NOT NULL DEFAULT '',
    PRIMARY KEY (session, position)
) STRICT, WITHOUT ROWID;
INSERT INTO probe VALUES(1,0,'gauge','rig','gauge','9b552459838e6146a8fbbfbb93d8afac8e9062001ebf7daf688aa822ebdd46d8','{"port-2":"MANIFOLD","port-1":"INLET"}',0,'');
INSERT INTO probe VALUES(1,1,'air','serial','/dev/ttyS1','70af7b631139c8b331b930c8a4c3034f61205b5511e0cb225f1f0f79a15b251a','{"left":"SUPPLY","right":"RETURN"}',0,'');
INSERT INTO probe VALUES(2,0,'gauge','rig','gauge','9b552459838e6146a8fbbfbb93d8afac8e9062001ebf7daf688aa822ebdd46d8','{"port-2":"MANIFOLD","port-1":"INLET"}',60,'');
INSERT INTO probe VALUES(2,1,'air','serial','/dev/ttyS1','70af7b631139c8b331b930c8a4c3034f61205b5511e0cb225f1f0f79a15b251a','{"left":"SUPPLY","right":"RETURN"}',60,'');
CREATE TABLE rereading (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    session INTEGER NOT NULL REFERENCES session,
    number INTEGER NOT NULL,
    made_at TEXT NOT NULL,
    version TEXT NOT NULL,
    complete INTEGER NOT NULL DEFAULT 0,
    UNIQUE (session, number)
) STRICT;
INSERT INTO rereading VALUES(1,2,1,'1970-01-01T00:00:00Z','test',1);
CREATE TABLE reread_probe (
    rereading INTEGER NOT NULL REFERENCES rereading,
    position INTEGER NOT NULL,
    profile TEXT NOT NULL REFERENCES profile,
    roles TEXT NOT NULL,
    samples INTEGER NOT NULL DEFAULT 0,
    PRIMARY KEY (rereading, position)
) STRICT, WITHOUT ROWID;
INSERT INTO reread_probe VALUES(1,0,'9b552459838e6146a8fbbfbb93d8afac8e9062001ebf7daf688aa822ebdd46d8','{"port-2":"MANIFOLD","port-1":"INLET"}',20);
INSERT INTO reread_probe VALUES(1,1,'70af7b631139c8b331b930c8a4c3034f61205b5511e0cb225f1f0f79a15b251a','{"left":"SUPPLY","right":"RETURN"}',20);
CREATE TABLE event_block (
    id INTEGER PRIMARY KEY,
    session INTEGER NOT NULL REFERENCES session,
    first_sequence INTEGER NOT NULL,
    next_sequence INTEGER NOT NULL,
    low_nanos INTEGER NOT NULL,
    high_nanos INTEGER NOT NULL,
    block BLOB NOT NULL,
    UNIQUE (session, next_sequence)
) STRICT;
INSERT INTO event_block VALUES(1,1,0,21,1,9223372036854775807,X'2600000001011502feffffffffffffff7f260600000600010600020600030200041d0005e6046f6a497802809ab3e6cc99b3e60c0011f8ffffef67666666666666102c00fbffff97ffffffffffffff076c40bcd80011180000009dc77bb602106860000ce6336613021030700000482002f200007154037d522a89a08803000080000608786081057c00600231c89001fa04741002e68638bdb594c18eda3010867baed477b07ce9254114580edcd85ddaadba82150bbd005a996492b8183bb21d518a50fb16bdf7de37e8ebb4afd18e1316dc55e8ad5cc033bf3fff9e19b3a351c6640ab447a77734a01ba563830b95838498ee9ffdfefce5c5f3dd1955f94d544230baf744b7a3fb499dac8cfbc2cbfed5bb3a6119f785c3d164705da7ac12be74f47e301e4f8775e2c7942f1f0cafebc95502a52b2e634c444a265caf516a2ce418c805b3e00958fca130f6941790d850a88dcf6079a8e43f2596ad2094183a8a1255c8b8540554033308e8d165a125689215d29a80cce90677cfa9c7312b9e9f18262bacbfdd136ac88179b63f8156be1f1ead4ec9482803b8e416d6b8ec0b4194cdd008cb73c1998cc0100d825bc2644cb0964849511f2b89c5b6ba80ff434e98301e5a2a0b4f0b98f134c398858fd61dbe51447009662e1defd78f6f3fbf7ff5ae5d3537387cf776f468a3da1c1acb522009b68145101066f13aa84f0a106e5efb93e9b87ffbf0a67f5ffa402d0ed70cf1b0757d2f9b29d91aaa05c1c972a7ad99e48912f184e914d0e6ab46d70b2a01ba72d06cb49b7f7f3a012d2477379b71f9c05fdeb4460b574d9917f6d21677a06f54a169efa285e246731f3c5a3994e5e0c5adce9969372ece99a9397cd7b902b1afb340870c9fe0c26584e3ee5c0500131d774091e7ee377d8baf0d995b5ac76e350f7083c4b22587c78823ce0d78cc102f7b8476ab45858b79928006bc0299c590be5ed4e0f6de408036e5d33d546adc20a3154b9476436304e4b69aef80b235ce9b1d32a9b0e5edaed7a4d3bf4cb981e06e9c6692b9b29c28e52c3fc184e73860c992452bb2dc9e487f001a8c03e8');
CREATE TABLE setting (
    key TEXT PRIMARY KEY,
    value TEXT NOT NULL CHECK (json_valid(value))
) STRICT, WITHOUT ROWID;
INSERT INTO setting VALUES('units.pressure','"Pa"');
CREATE TABLE note (
    id INTEGER PRIMARY KEY,
    session INTEGER NOT NULL REFERENCES session,
    time_nanos INTEGER,
    written_at TEXT NOT NULL,
    text TEXT NOT NULL
) STRICT;
CREATE TABLE attachment (
    id INTEGER PRIMARY KEY,
    session INTEGER NOT NULL REFERENCES session,
    name TEXT NOT NULL,
    media_type TEXT NOT NULL,
    added_at TEXT NOT NULL,
    digest TEXT NOT NULL,
    content BLOB NOT NULL
) STRICT;
CREATE TABLE frame (
    session INTEGER NOT NULL REFERENCES session,
    number INTEGER NOT NULL,
    next_sequence INTEGER NOT NULL,
    until_nanos INTEGER NOT NULL,
    samples BLOB NOT NULL,
    events BLOB NOT NULL,
    PRIMARY KEY (session, number)
) STRICT, WITHOUT ROWID;
INSERT INTO frame VALUES(1,0,21,9,X'060000000100fde48844',X'060000000100fde48844');
INSERT INTO frame VALUES(2,0,20,1000000000,X'2400000001020a0089d293ad0307020000360001360a0089d293ad03070201003501013502fb98fb008284af5f00008e09ca8b58004040404040404046c080c8fdffff43561c402102000098a5ea1b8792fa2654f44e7db8d1772bde7051fa363b95088586ad948c2fab59d3fb5800cd5973e6cc597346c080c8fdffff43561c402102000098a5ea1b8792fa2654f44e7db8d1772bde7051fa363b95088586ad948c2f8a6e843a008284af5f0000e78e8e5058004040404040404049c080b8fdffff232b0ea010010000c852f58da1a4be798adea9881b7d37f1868beedbec54100a0dbb948c2f8e4c79b85800e6cc5973e6cc5949c080b8fdffff232b0ea010010000c852f58da1a4be798adea9881b7d37f1868beedbec54100a0dbb948c2f7736a7cf',X'210000000101140089d293ad032b06000005000102000205000302000402000534c764952600cca3962d0011f8ffffb78131320000000000f8ffff9fa0acb903000000f8ffffa7a0acb9030000000000591a290500111800003796b92f000066a2b2ac0210003000d812ef5100007154037d2400d14443e90b3050d036d433323651d036d6333534e2e50a30c41031c21031c610011a80668e2986881986883986880586882586c810743300465d31ec');
INSERT INTO frame VALUES(2,1,40,2000000000,X'2c00000001020abea8d6b90789d293ad030b020000380001380abea8d6b90789d293ad030b020100370101371b76ea1ebea8d6b9078284af5f0000be63bd05580068fc4b4347d54046c080e8fdffff135d18411e020000a8fb7732adc119a74a9f795a5b06b2b0fdfe125af427e6adaa3a61577e98e7034241396d5800f5557fe9d3ee7346c080e8fdffff135d18411e020000a8fb7732adc119a74a9f795a5b06b2b0fdfe125af427e6adaa3a61577e98e7032a462a8ebea8d6b9078284af5f0000ee1f2f56580054fec5c1c36a4049c080d8fdffff8b2e8c200f010000c8fd3b996e70c6a9e8334fab65200bebf797d0d29f98b75375c2ae7e98e703ca7410ac5800facadff469f75949c080d8fdffff8b2e8c200f010000c8fd3b996e70c6a9e8334fab65200bebf797d0d29f98b75375c2ae7e98e703d80a8e4c',X'25000000010114bea8d6b90789d293ad032f06000005000102000205000302000402000536ee34c798bea8d6b907cca3962d0011f8ffffb78131320000000000f8ffff9fa0acb903000000f8ffffa7a0acb90300000000008a020c422811180000f12876f1000066a2b2ac0210003000d812ef5100007154037d26003f7406ce0b303450d036d433323651d036d6333534e2e50a3034c41432c21432c614021a826e9629a69019a69039a69005a69025a6d050763d00a45f843c');
INSERT INTO frame VALUES(2,2,60,3000000000,X'2c00000001020afcd0acf30e89d293ad030b020000390001390afcd0acf30e89d293ad030b020100380101386300c14cfcd0acf30e8284af5f0000f66aaa425800d5ec736261694146c080f8fdffffcbab10d715020000b869f545fa9a3b619a33727c7a8198971ad2adb28a74b1cd8ab7a2e87aea80030336a88be958006246e748eec27446c080f8fdffffcbab10d715020000b869f545fa9a3b619a33727c7a8198971ad2adb28a74b1cd8ab7a2e87aea8003033563a192fcd0acf30e8284af5f0000a616381158006af659d1d0d44049c080e8fdffffeb5588eb0a010000d8b4fa22c5e64e9872468e4f158879a9906e95d5d2c536ab6e45d175ea800303afa42c0c580050c3734477615a49c080e8fdffffeb5588eb0a010000d8b4fa22c5e64e9872468e4f158879a9906e95d5d2c536ab6e45d175ea800303b4e93446',X'25000000010114fcd0acf30e89d293ad032f0600000500010200020500030200040200053693ee100cfcd0acf30ecca3962d0011f8ffffb78131320000000000f8ffff9fa0acb903000000f8ffffa7a0acb9030000000000d6762efc50111800004a9dca97000066a2b2ac0210003000d812ef5100007154037d26003f7406ce0b303250d036d433323651d036d6333534e2e50a3032c41432c21432c614021a826e9629a69019a69039a69005a69025a6d050763d005873ac32');
CREATE TABLE sample_block (
    id INTEGER PRIMARY KEY,
    session INTEGER NOT NULL REFERENCES session,
    probe INTEGER NOT NULL,
    number INTEGER NOT NULL,
    low_nanos INTEGER NOT NULL,
    high_nanos INTEGER NOT NULL,
    summary BLOB NOT NULL,
    block BLOB NOT NULL,
    UNIQUE (session, probe, number)
) STRICT;
CREATE TABLE summary (
    id INTEGER PRIMARY KEY,
    session INTEGER NOT NULL REFERENCES session,
    probe INTEGER NOT NULL,
    level INTEGER NOT NULL,
    number INTEGER NOT NULL,
    low_nanos INTEGER NOT NULL,
    high_nanos INTEGER NOT NULL,
    block BLOB NOT NULL,
    UNIQUE (session, probe, level, number, low_nanos, high_nanos)
) STRICT;
CREATE TABLE rejected (
    session INTEGER NOT NULL REFERENCES session,
    batch INTEGER NOT NULL,
    part INTEGER NOT NULL,
    probe INTEGER NOT NULL,
    time_nanos INTEGER NOT NULL,
    stream_offset INTEGER NOT NULL,
    reason TEXT NOT NULL,
    PRIMARY KEY (session, batch, part)
) STRICT, WITHOUT ROWID;
CREATE TABLE reading (
    session INTEGER NOT NULL REFERENCES session,
    batch INTEGER NOT NULL,
    part INTEGER NOT NULL,
    step TEXT NOT NULL,
    purpose TEXT NOT NULL,
    time_nanos INTEGER NOT NULL,
    by_hand INTEGER NOT NULL,
    hand_reason TEXT NOT NULL,
    PRIMARY KEY (session, batch, part)
) STRICT, WITHOUT ROWID;
INSERT INTO reading VALUES(1,0,0,'found-low','found',9,1,'by hand');
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
INSERT INTO channel_reading VALUES(1,0,0,0,'INLET',6.7123456789012339029,0.3000000000000000444,NULL,NULL,'[in_i''H2O]{60degF}',-19999999991,9,0,'not settled: could still move','{"settle_uncertainty":"NaN","zero_offset":"-0.0"}');
INSERT INTO channel_reading VALUES(1,0,0,1,'SUPPLY',NULL,0.0,9.9998886718268300563e-321,0.0,'Cel',0,9,1,'settled','{"value":"-0.0"}');
CREATE TABLE reread_frame (
    rereading INTEGER NOT NULL REFERENCES rereading,
    number INTEGER NOT NULL,
    next_sequence INTEGER NOT NULL,
    until_nanos INTEGER NOT NULL,
    samples BLOB NOT NULL,
    events BLOB NOT NULL,
    PRIMARY KEY (rereading, number)
) STRICT, WITHOUT ROWID;
INSERT INTO reread_frame VALUES(1,0,100,5000000000,X'060000000100fde48844',X'060000000100fde48844');
CREATE TABLE reread_sample_block (
    id INTEGER PRIMARY KEY,
    rereading INTEGER NOT NULL REFERENCES rereading,
    probe INTEGER NOT NULL,
    number INTEGER NOT NULL,
    low_nanos INTEGER NOT NULL,
    high_nanos INTEGER NOT NULL,
    summary BLOB NOT NULL,
    block BLOB NOT NULL,
    UNIQUE (rereading, probe, number)
) STRICT;
INSERT INTO reread_sample_block VALUES(1,1,0,0,4000000124,4900000133,X'19000000010101f8a1d9e61d89d293ad030e02000045000145c2df00c6f8a1d9e61d00004092f454db00000a24466b28001000103058cacfe2a5c000040080008000958331d54306062000000400040c96f2b378293000010020002040e5604cf590810108000001000166f23dae740b0c4000006c3d379328001000100025979caf72cd00040080008080fbe9973baa6c0620000004000440c925e7ab5c33000100200020e07efae58e2a9b0108000001000132bf0a7b41d80c4000002fe1394a',X'1900000001010af8a1d9e61d89d293ad030b0200003a00013a09002feef8a1d9e61d8284af5f0000657af8dd580043cbf2e7e2cb4246c08064e2c4b125f5a7303316015d1b4b8e80ef7cbc4840c2c7282560c22ef91230a6beae09383b53f004e462938402002113ab115800d0e465ce6fe57546c08064e2c4b125f5a7303316015d1b4b8e80ef7cbc4840c2c7282560c22ef91230a6beae09383b53f004e462938402003cc13a34');
INSERT INTO reread_sample_block VALUES(2,1,1,0,4000000124,4900000133,X'19000000010101f8a1d9e61d89d293ad030e02010045010145a526718cf8a1d9e61d00004092f454db00000a24466b2800100010202ce567f1522001040080008080cac198ea210309200000040004084bf959bc1448000100200020a07230a67ac8400208000001000132f91e57ba05124000009092637e280010001080924bce57b92601040080008080fdf4cb1d553609200000040004a0e492f355ae49000100200020603ffd7247954d02080000010001985f85bd206c12400000a61212d9',X'1900000001010af8a1d9e61d89d293ad030b0201003801013818aa02faf8a1d9e61d8284af5f0000657af8dd5800c265f973f1654149c080546ae2d892fa27cc8c45406b63c91110cfc78b04043e4629010bbbe44b404c7d5d13503b53f00464b1494201804aaa10580068f252e7d7f25a49c080546ae2d892fa27cc8c45406b63c91110cfc78b04043e4629010bbbe44b404c7d5d13503b53f00464b14942012732dde6');
CREATE TABLE reread_summary (
    id INTEGER PRIMARY KEY,
    rereading INTEGER NOT NULL REFERENCES rereading,
    probe INTEGER NOT NULL,
    level INTEGER NOT NULL,
    number INTEGER NOT NULL,
    low_nanos INTEGER NOT NULL,
    high_nanos INTEGER NOT NULL,
    block BLOB NOT NULL,
    UNIQUE (rereading, probe, level, number, low_nanos, high_nanos)
) STRICT;
CREATE TABLE reread_rejected (
    rereading INTEGER NOT NULL REFERENCES rereading,
    batch INTEGER NOT NULL,
    part INTEGER NOT NULL,
    probe INTEGER NOT NULL,
    time_nanos INTEGER NOT NULL,
    stream_offset INTEGER NOT NULL,
    reason TEXT NOT NULL,
    PRIMARY KEY (rereading, batch, part)
) STRICT, WITHOUT ROWID;
CREATE TABLE reread_reading (
    rereading INTEGER NOT NULL REFERENCES rereading,
    batch INTEGER NOT NULL,
    part INTEGER NOT NULL,
    step TEXT NOT NULL,
    purpose TEXT NOT NULL,
    time_nanos INTEGER NOT NULL,
    by_hand INTEGER NOT NULL,
    hand_reason TEXT NOT NULL,
    PRIMARY KEY (rereading, batch, part)
) STRICT, WITHOUT ROWID;
INSERT INTO reread_reading VALUES(1,0,0,'found-low','found',4900000133,1,'by hand');
CREATE TABLE reread_channel_reading (
    rereading INTEGER NOT NULL,
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
    PRIMARY KEY (rereading, batch, part, position),
    FOREIGN KEY (rereading, batch, part) REFERENCES reread_reading
) STRICT, WITHOUT ROWID;
INSERT INTO reread_channel_reading VALUES(1,0,0,0,'INLET',6.7123456789012339029,0.3000000000000000444,NULL,NULL,'[in_i''H2O]{60degF}',-15099999867,4900000133,0,'not settled: could still move','{"settle_uncertainty":"NaN","zero_offset":"-0.0"}');
INSERT INTO reread_channel_reading VALUES(1,0,0,1,'SUPPLY',NULL,0.0,9.9998886718268300563e-321,0.0,'Cel',0,4900000133,1,'settled','{"value":"-0.0"}');
DELETE FROM sqlite_sequence;
INSERT INTO sqlite_sequence VALUES('session',2);
INSERT INTO sqlite_sequence VALUES('rereading',1);
CREATE INDEX sample_block_time ON sample_block (session, probe, high_nanos, low_nanos);
CREATE INDEX reread_sample_block_time ON reread_sample_block (rereading, probe, high_nanos, low_nanos);
COMMIT;

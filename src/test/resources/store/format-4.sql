-- A workspace of format 4, dumped from one that the store of that format wrote (see FormerFormatTest for what is in it).
PRAGMA application_id = 1400138861;
PRAGMA user_version = 4;
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
, keeps_bytes INTEGER NOT NULL DEFAULT 1, settle TEXT) STRICT;
INSERT INTO session VALUES(1,'job','Ash Lane 12, üpstairs "north"','2026-03-14T09:31:07.123456789Z','Europe/Berlin','[in_i''H2O]{60degF}','Cel',1,'{"key":"two-stage-natural-gas","title":"two-stage furnace, natural gas","fuels":["NATURAL_GAS"],"stages":["low","high"],"steps":[{"key":"plate","kind":"PLATE","stage":"","group":"","name":"Plate","title":"Rating plate","instruction":"Check every number below against the rating plate","caution":"The rating plate and the local code override every customary number. Work on gas is for a licensed or registered person.","press":"The plate says so","required":[],"ticks":[],"settleSeconds":0.0,"holdSeconds":0.0,"limits":[]},{"key":"probes","kind":"PROBES","stage":"","group":"","name":"Probes","title":"Probes on their places","instruction":"Gas off, power off, open the ports, hang the gauge, put the air probes in the ducts","caution":"Gas off at the manual valve and power off before a test port is opened. Smell of gas: no switches, ventilate, leave, call.","press":"Probes are in place","required":[],"ticks":[],"settleSeconds":0.0,"holdSeconds":0.0,"limits":[]},{"key":"zero","kind":"ZERO","stage":"","group":"","name":"Zero","title":"Zero, ports open to air","instruction":"Leave both hoses open to the air, the gauge lying as it will be used","caution":"A zero taken with pressure on spoils every reading after it. Gas stays off at the manual valve.","press":"Both ports are open to air","required":["INLET","MANIFOLD"],"ticks":[],"settleSeconds":0.0,"holdSeconds":0.0,"limits":[]},{"key":"lock-up","kind":"LOCK_UP","stage":"","group":"Supply","name":"lock-up","title":"Supply at lock-up","instruction":"Hoses on their taps, gas on, nothing firing: read the inlet at rest","caution":"An inlet that keeps climbing with nothing firing is a regulator that does not lock up: shut off and call the supplier.","press":"Gas is on, nothing fires","required":["INLET","MANIFOLD"],"ticks":[],"settleSeconds":0.0,"holdSeconds":0.0,"limits":[]},{"key":"found-low","kind":"FOUND","stage":"low","group":"As found","name":"low fire","title":"As found, low fire","instruction":"Call for low fire only. Read it as you found it: touch no screw.","caution":"Hot flue, live terminals, moving blower. The plate''s input is never exceeded; the maker''s instructions and local code come first.","press":"Burner is on low fire","required":["INLET","MANIFOLD","SUPPLY","RETURN"],"ticks":[],"settleSeconds":0.0,"holdSeconds":0.0,"limits":[],"settled":{"rule":"three-readings-3-degf","alone":true}},{"key":"found-high","kind":"FOUND","stage":"high","group":"As found","name":"high fire","title":"As found, high fire","instruction":"Call for high fire. Read it as you found it: touch no screw.","caution":"Hot flue, live terminals, moving blower. The plate''s input is never exceeded; the maker''s instructions and local code come first.","press":"Burner is on high fire","required":["INLET","MANIFOLD","SUPPLY","RETURN"],"ticks":[],"settleSeconds":0.0,"holdSeconds":0.0,"limits":[],"settled":{"rule":"three-readings-3-degf","alone":true}},{"key":"left-low","kind":"LEFT","stage":"low","group":"As left","name":"low fire","title":"As left, low fire","instruction":"Bring the manifold to its target at low fire, then put the cap back","caution":"A sealed air/gas-ratio valve is set only with a combustion analysis and the maker''s say-so. Outside the adjusting window, change orifices, not pressure.","press":"Cap is on: check it stays","required":["INLET","MANIFOLD","SUPPLY","RETURN"],"ticks":[],"settleSeconds":0.0,"holdSeconds":0.0,"limits":[],"settled":{"rule":"three-readings-3-degf","alone":true}},{"key":"left-high","kind":"LEFT","stage":"high","group":"As left","name":"high fire","title":"As left, high fire","instruction":"Bring the manifold to its target at high fire, then put the cap back","caution":"A sealed air/gas-ratio valve is set only with a combustion analysis and the maker''s say-so. Outside the adjusting window, change orifices, not pressure.","press":"Cap is on: check it stays","required":["INLET","MANIFOLD","SUPPLY","RETURN"],"ticks":[],"settleSeconds":0.0,"holdSeconds":0.0,"limits":[],"settled":{"rule":"three-readings-3-degf","alone":true}},{"key":"relight","kind":"CHECK","stage":"","group":"Relight","name":"relight","title":"Relit from cold","instruction":"Let the burner go out, wait for the purge, and call for heat again with the cap on","caution":"Stand aside of the burner. A late or rough ignition, or a flame that lifts or flashes back: shut off and find the cause before you light again.","press":"Tick what you have seen","required":[],"ticks":["Main flame lights smoothly from cold, cap on","Flame is proved and stays, no change when the blower starts"],"settleSeconds":0.0,"holdSeconds":0.0,"limits":[]},{"key":"clock-low","kind":"CLOCK","stage":"low","group":"Clock","name":"low fire","title":"Meter clocked, low fire","instruction":"Burner on low fire: press each time the meter''s pointer passes its mark","caution":"All other gas loads and pilots off, and a warm burner; relight every one of them afterwards. The plate''s input is never exceeded. Never chase the clocked input with the pressure: orifice, heating value and meter come first.","press":"Pointer at the mark","required":[],"ticks":[],"settleSeconds":0.0,"holdSeconds":0.0,"limits":[]},{"key":"combustion-low","kind":"COMBUSTION","stage":"low","group":"Combustion","name":"low fire","title":"Flue gas, low fire","instruction":"Burner warm on low fire, sampled undiluted before any draught hood: oxygen, carbon monoxide, stack","caution":"Hot flue. Personal CO alarm on while you work. CO over its limit: shut off, tag, tell the customer and the gas supplier. A gas/air ratio is set only as its maker says, with this analysis.","press":"These are the values","required":["OXYGEN","CARBON_MONOXIDE","STACK"],"ticks":[],"settleSeconds":0.0,"holdSeconds":0.0,"limits":[{"lower":"-Infinity","upper":400.0,"unit":"[ppm]","source":"ANSI Z21.47-1993 2.8.1","subject":"co air-free"},{"lower":15.0,"upper":100.0,"unit":"%","source":"common practice","subject":"excess air"}],"settled":{"rule":"three-readings-3-degf","alone":true}},{"key":"clock-high","kind":"CLOCK","stage":"high","group":"Clock","name":"high fire","title":"Meter clocked, high fire","instruction":"Burner on high fire: press each time the meter''s pointer passes its mark","caution":"All other gas loads and pilots off, and a warm burner; relight every one of them afterwards. The plate''s input is never exceeded. Never chase the clocked input with the pressure: orifice, heating value and meter come first.","press":"Pointer at the mark","required":[],"ticks":[],"settleSeconds":0.0,"holdSeconds":0.0,"limits":[]},{"key":"combustion-high","kind":"COMBUSTION","stage":"high","group":"Combustion","name":"high fire","title":"Flue gas, high fire","instruction":"Burner warm on high fire, sampled undiluted before any draught hood: oxygen, carbon monoxide, stack","caution":"Hot flue. Personal CO alarm on while you work. CO over its limit: shut off, tag, tell the customer and the gas supplier. A gas/air ratio is set only as its maker says, with this analysis.","press":"These are the values","required":["OXYGEN","CARBON_MONOXIDE","STACK"],"ticks":[],"settleSeconds":0.0,"holdSeconds":0.0,"limits":[{"lower":"-Infinity","upper":400.0,"unit":"[ppm]","source":"ANSI Z21.47-1993 2.8.1","subject":"co air-free"},{"lower":15.0,"upper":100.0,"unit":"%","source":"common practice","subject":"excess air"}],"settled":{"rule":"three-readings-3-degf","alone":true}},{"key":"statics","kind":"STATICS","stage":"","group":"Air","name":"statics","title":"Static pressure of the air","instruction":"Blower at its heating speed, filter and doors in place: read the static pressure before and after it","caution":"Moving blower, live terminals. Drill only where nothing lies behind the sheet; never into the heat exchanger, the coil or a condensate pan. Close the holes afterwards.","press":"These are the values","required":["SUPPLY_STATIC","RETURN_STATIC"],"ticks":[],"settleSeconds":0.0,"holdSeconds":0.0,"limits":[]},{"key":"shut","kind":"SHUT","stage":"","group":"Valve","name":"shut","title":"Valve shut","instruction":"End the call for heat: the manifold must fall at once and stay at nothing","caution":"A manifold at zero does not prove a tight valve: the burners are open holes. Only a let-by test with the trapped inlet does.","press":"The call has ended","required":["MANIFOLD"],"ticks":[],"settleSeconds":0.0,"holdSeconds":0.0,"limits":[]},{"key":"close","kind":"CLOSE","stage":"","group":"","name":"Close","title":"Closing up","instruction":"Gas off, hoses off the taps and open to air: read the zero again, then close up and leak-test","caution":"Close the ports and leak-test them with the burner firing, with solution or a detector, never a flame.","press":"Both ports are open to air","required":["INLET","MANIFOLD"],"ticks":["Ports closed and caps on, leak-tested with the burner firing","Thermostat and staging put back to normal","All other appliances relit and working"],"settleSeconds":0.0,"holdSeconds":0.0,"limits":[]},{"key":"record","kind":"RECORD","stage":"","group":"","name":"Record","title":"Record","instruction":"Read the record through, say who you are, and hand it over","caution":"The record says what was measured. It does not authorise anything, and it lists what it does not cover.","press":"Make the record","required":[],"ticks":[],"settleSeconds":0.0,"holdSeconds":0.0,"limits":[]}]}','{"appliance":"two-stage furnace, attic","fuel":"NATURAL_GAS","stages":[{"key":"low","name":"low fire","manifoldTarget":1.6,"manifoldTolerance":0.30000000000000004,"unit":"[in_i''H2O]","inputBtuPerHour":52000.0},{"key":"high","name":"high fire","manifoldTarget":3.5,"manifoldTolerance":0.3,"unit":"[in_i''H2O]{4Cel}","inputBtuPerHour":"NaN"}],"inlet":{"lower":4.5,"upper":"Infinity","unit":"[in_i''H2O]{20Cel}","source":"plate"},"rise":{"lower":-0.0,"upper":60.0,"unit":"difference [degF]","source":"plate"}}','0.1.0-test',NULL,1,'{"gas":{"unit":"[in_i''H2O]","drift":0.01,"horizon":40.0,"windows":[20.0,40.0],"dwell":0.0,"hunting":12.0}}');
INSERT INTO session VALUES(2,'log','Log log','2026-03-14T09:31:00.000000001Z','America/Denver','[in_i''H2O]','[degF]',1,NULL,NULL,'0.1.0-test',NULL,1,NULL);
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
INSERT INTO note VALUES(1,1,7,'1970-01-01T00:00:00Z','a note');
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
INSERT INTO frame VALUES(1,0,21,9,X'060000000100fde48844',X'2700000001011502feffffffffffffff7fad010600000800010800020800030200041c0005fd0487e3595102809ab3e6cc99b3e60c00e8ef67666666666666e867666666666666f867666666666666f867666666666666f867666666666666f867666666666666f867666666666666e867666666666666f867666666666666f867666666666666f867666666666666f867666666666666f867666666666666f867666666666666f867666666666666f867666666666666f867666666666666f867666666666666e867666666666666a09799999999999907a6a864a700285055555555056ce7e1ab02284800040000012f35a4a90228400006000000fa5b907000007154037d402899c10704002000810326200000257a98c00e0162f03c7b2210009411f06bad54cb92123114756d95ff90cac64d4321302cd83133e8584e35530cb881a9a9d07d9b8e84a42b49173214a57fe1debd7fe0efe86fe84d03dd11c195ac48eeb927e7dc476f6894323907daa5e33b1ad095d2b1c183ca40424cb7cf7e7dfafce2f9e60caa40139510ccdd7aa0dbc1fdc8232b61c5bd0fbcec5dbd3b052cee7d603818f5af4f2177011f3a78df1f0ec7e129f021e4c3fbe1f569e65d00a10b2e632c49a464c2f512798d850c2f32c12c38df7b008b3fe4c656710189ad09b5f22011cb6a4afe1362d9026a12b3ca771295cbb8200aa8066690a04b67b996a0499a4b6b0232a52b1439a5de5366c1b38ac3a4b95356a67b400d19304ff61368e5852d8f16154f2494013c720b4b54d11382289ba210966582331981211a04b784c99860e3b13673c4c74ae28c599d4355afffc99c30613c6aa9b03347054cf93cc53b0b1f2d2ab72b45049760a6d229fdf9fdeb8f6f5f3cdbbbe606fb267737b434b84bae19cbe640126c038b2020cca21da44f721088087ba3f1b077fbf8a6775fe8402caed5046705d61876531150c9966ef1f04070b29ce025933c51221e313d0794f9aadef12e9500ed4a4cbb8d7aabf1e7af1dd05c72e76cc2e5237f79d31c3c202197596e2f6d7e07fa46e59a762f9a98576f6c8383947d59f65adce99c9856fde29c98138f6fda5720b6a724d0908574fbe0c4096772e32a00a8aded1ec8b3ccfda76f71dbd0d01a19fe32b66936f6e4064db9821c9611479ce380569c35345b927676875d9d629e24a001eb492631cc5fbb721dd36dab6945556ef3caae0deb64b06089d26e688c800c9db8f90e285be2c2da9049852d6f75bc3e55dfd722816036ee09495d672a9662968f686ae778c092198b1664b6ae987e03c2b2684e');
INSERT INTO frame VALUES(2,0,20,1000000000,X'2400000001020a0089d293ad03070200003b00013b0a0089d293ad03070201003a01013aaccaab7a008284af5f00008e09ca8b58004040404040404046c0007442561c4021720327322152b93c1621ca2e5eec204a768cb4209afdc86e20f28d151b20ca4b74b91f1ab7e7491f02e1eaa11e5800cd5973e6cc597346c0007442561c4021720327322152b93c1621ca2e5eec204a768cb4209afdc86e20f28d151b20ca4b74b91f1ab7e7491f02d61018ce008284af5f0000e78e8e5058004040404040404049c00064222b0ea010ddc0894c882a97c72244ede2c50e22b263a40591f623bb81c81b2b3640d44b74b91f8adbf3a40f011360a5a95800e6cc5973e6cc5949c00064222b0ea010ddc0894c882a97c72244ede2c50e22b263a40591f623bb81c81b2b3640d44b74b91f8adbf3a40f016e8a5a55',X'210000000101140089d293ad03510600000800010200020800030200040200053402ff328700cca3962d00c8b3813132d8c018196c608c0c363046061b1823830d8c91c106c6c860036364b0813132748fbdc36d608c0c363046061b1823830d8c91c106c6c860036364b0813132d8c018196c608c0cd071da19002850555555550173707b6c000066a2b2ac0228000040000000844d771100007154037d2400d14443e90b3050d036d433323651d036d6333534e2e50a30c41031c21031c610011a80668e2986881986883986880586882586c810743300465d31ec');
INSERT INTO frame VALUES(2,1,40,2000000000,X'2c00000001020abea8d6b90789d293ad030b0200003b00013b0abea8d6b90789d293ad030b0201003a01013aeaca5136bea8d6b9078284af5f0000be63bd05580068fc4b4347d54046c00074125d18411e3a5fdca71d8a9dc2001df25ecf4b1c824507891b924d6fb81a4ace0cda19f278e5ed185a59fff317020ca9fc7e5800f5557fe9d3ee7346c00074125d18411e3a5fdca71d8a9dc2001df25ecf4b1c824507891b924d6fb81a4ace0cda19f278e5ed185a59fff317023911ef19bea8d6b9078284af5f0000ee1f2f56580054fec5c1c36a4049c000648a2e8c200fd117f76987b05318a043eff5bcc4212c3a48dc5036bde16a889c19b4330479e5ed18aaacfff90b01feddf9215800facadff469f75949c000648a2e8c200fd117f76987b05318a043eff5bcc4212c3a48dc5036bde16a889c19b4330479e5ed18aaacfff90b01a4f7666b',X'25000000010114bea8d6b90789d293ad0355060000080001020002080003020004020005362baf6039bea8d6b907cca3962d00c8b3813132d8c018196c608c0c363046061b1823830d8c91c106c6c860036364b0813132748fbdc36d608c0c363046061b1823830d8c91c106c6c860036364b0813132d8c018196c608c0c467e1430282850555555550130114023000066a2b2ac0228000040000000844d771100007154037d26003f7406ce0b303450d036d433323651d036d6333534e2e50a3034c41432c21432c614021a826e9629a69019a69039a69005a69025a6d050763d00a45f843c');
INSERT INTO frame VALUES(2,2,60,3000000000,X'2c00000001020afcd0acf30e89d293ad030b0200003b00013b0afcd0acf30e89d293ad030b0201003a01013a1f5cbd97fcd0acf30e8284af5f0000f66aaa425800d5ec736261694146c00074caab10d715eaf615b4146a297883139a0f3f4512dace72f910cae51ba00f822b43390ebacff1c40c7a5a31430b021e45727458006246e748eec27446c00074caab10d715eaf615b4146a297883139a0f3f4512dace72f910cae51ba00f822b43390ebacff1c40c7a5a31430b02521b911afcd0acf30e8284af5f0000a616381158006af659d1d0d44049c00064ea5588eb0abd7d052d852c056f7042f9f05324217796cb8750976f803ee85686721cc4cff1c40c42ad98a10501b42c99b1580050c3734477615a49c00064ea5588eb0abd7d052d852c056f7042f9f05324217796cb8750976f803ee85686721cc4cff1c40c42ad98a1050163adfcd9',X'25000000010114fcd0acf30e89d293ad0355060000080001020002080003020004020005365675b7adfcd0acf30ecca3962d00c8b3813132d8c018196c608c0c363046061b1823830d8c91c106c6c860036364b0813132748fbdc36d608c0c363046061b1823830d8c91c106c6c860036364b0813132d8c018196c608c0c1e831d4d5028505555555501f5b20df2000066a2b2ac0228000040000000844d771100007154037d26003f7406ce0b303250d036d433323651d036d6333534e2e50a3032c41432c21432c614021a826e9629a69019a69039a69005a69025a6d050763d005873ac32');
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
INSERT INTO reading VALUES(1,0,1,'found-low','found',9,0,'');
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
    odd TEXT, rule TEXT NOT NULL DEFAULT '',
    PRIMARY KEY (session, batch, part, position),
    FOREIGN KEY (session, batch, part) REFERENCES reading
) STRICT, WITHOUT ROWID;
INSERT INTO channel_reading VALUES(1,0,0,0,'INLET',6.7123456789012339029,0.3000000000000000444,NULL,NULL,'[in_i''H2O]{60degF}',-19999999991,9,0,'not settled: could still move','{"settle_uncertainty":"NaN","zero_offset":"-0.0"}','');
INSERT INTO channel_reading VALUES(1,0,0,1,'SUPPLY',NULL,0.0,9.9998886718268300563e-321,0.0,'Cel',0,9,1,'settled','{"value":"-0.0"}','');
INSERT INTO channel_reading VALUES(1,0,1,0,'STACK',400.0,1.0,2.0,0.0,'[degF]',0,9,1,'steady',NULL,'three-readings-3-degf');
CREATE TABLE reread_frame (
    rereading INTEGER NOT NULL REFERENCES rereading,
    number INTEGER NOT NULL,
    next_sequence INTEGER NOT NULL,
    until_nanos INTEGER NOT NULL,
    samples BLOB NOT NULL,
    events BLOB NOT NULL,
    PRIMARY KEY (rereading, number)
) STRICT, WITHOUT ROWID;
INSERT INTO reread_frame VALUES(1,0,80,5000000000,X'060000000100fde48844',X'060000000100fde48844');
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
    odd TEXT, rule TEXT NOT NULL DEFAULT '',
    PRIMARY KEY (rereading, batch, part, position),
    FOREIGN KEY (rereading, batch, part) REFERENCES reread_reading
) STRICT, WITHOUT ROWID;
INSERT INTO reread_channel_reading VALUES(1,0,0,0,'INLET',6.7123456789012339029,0.3000000000000000444,NULL,NULL,'[in_i''H2O]{60degF}',-15099999867,4900000133,0,'not settled: could still move','{"settle_uncertainty":"NaN","zero_offset":"-0.0"}','');
INSERT INTO reread_channel_reading VALUES(1,0,0,1,'SUPPLY',NULL,0.0,9.9998886718268300563e-321,0.0,'Cel',0,4900000133,1,'settled','{"value":"-0.0"}','');
DELETE FROM sqlite_sequence;
INSERT INTO sqlite_sequence VALUES('session',2);
INSERT INTO sqlite_sequence VALUES('rereading',1);
CREATE INDEX sample_block_time ON sample_block (session, probe, high_nanos, low_nanos);
CREATE INDEX reread_sample_block_time ON reread_sample_block (rereading, probe, high_nanos, low_nanos);
COMMIT;

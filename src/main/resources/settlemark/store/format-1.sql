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
CREATE TABLE profile (
    digest TEXT PRIMARY KEY,
    id TEXT NOT NULL,
    name TEXT NOT NULL,
    text TEXT NOT NULL
) STRICT, WITHOUT ROWID;
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
CREATE TABLE batch (
    session INTEGER NOT NULL REFERENCES session,
    number INTEGER NOT NULL,
    next_sequence INTEGER NOT NULL,
    until_nanos INTEGER NOT NULL,
    low_nanos INTEGER,
    high_nanos INTEGER,
    PRIMARY KEY (session, number)
) STRICT, WITHOUT ROWID;
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

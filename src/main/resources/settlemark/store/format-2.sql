ALTER TABLE probe ADD COLUMN identity TEXT NOT NULL DEFAULT '';
CREATE TABLE rereading (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    session INTEGER NOT NULL REFERENCES session,
    number INTEGER NOT NULL,
    made_at TEXT NOT NULL,
    version TEXT NOT NULL,
    complete INTEGER NOT NULL DEFAULT 0,
    UNIQUE (session, number)
) STRICT;
CREATE TABLE reread_probe (
    rereading INTEGER NOT NULL REFERENCES rereading,
    position INTEGER NOT NULL,
    profile TEXT NOT NULL REFERENCES profile,
    roles TEXT NOT NULL,
    samples INTEGER NOT NULL DEFAULT 0,
    PRIMARY KEY (rereading, position)
) STRICT, WITHOUT ROWID;
CREATE TABLE reread_batch (
    rereading INTEGER NOT NULL REFERENCES rereading,
    number INTEGER NOT NULL,
    next_sequence INTEGER NOT NULL,
    until_nanos INTEGER NOT NULL,
    low_nanos INTEGER,
    high_nanos INTEGER,
    PRIMARY KEY (rereading, number)
) STRICT, WITHOUT ROWID;
CREATE TABLE reread_sample_block (
    rereading INTEGER NOT NULL,
    batch INTEGER NOT NULL,
    probe INTEGER NOT NULL,
    channel INTEGER NOT NULL,
    part INTEGER NOT NULL,
    block BLOB NOT NULL,
    PRIMARY KEY (rereading, batch, probe, channel, part),
    FOREIGN KEY (rereading, batch) REFERENCES reread_batch
) STRICT, WITHOUT ROWID;
CREATE TABLE reread_rejected (
    rereading INTEGER NOT NULL,
    batch INTEGER NOT NULL,
    part INTEGER NOT NULL,
    probe INTEGER NOT NULL,
    time_nanos INTEGER NOT NULL,
    stream_offset INTEGER NOT NULL,
    reason TEXT NOT NULL,
    PRIMARY KEY (rereading, batch, part),
    FOREIGN KEY (rereading, batch) REFERENCES reread_batch
) STRICT, WITHOUT ROWID;
CREATE TABLE reread_reading (
    rereading INTEGER NOT NULL,
    batch INTEGER NOT NULL,
    part INTEGER NOT NULL,
    step TEXT NOT NULL,
    purpose TEXT NOT NULL,
    time_nanos INTEGER NOT NULL,
    by_hand INTEGER NOT NULL,
    hand_reason TEXT NOT NULL,
    PRIMARY KEY (rereading, batch, part),
    FOREIGN KEY (rereading, batch) REFERENCES reread_batch
) STRICT, WITHOUT ROWID;
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

ALTER TABLE {t}batch RENAME TO former_{t}batch;
ALTER TABLE {t}sample_block RENAME TO former_{t}sample_block;
ALTER TABLE {t}rejected RENAME TO former_{t}rejected;
ALTER TABLE {t}reading RENAME TO former_{t}reading;
ALTER TABLE {t}channel_reading RENAME TO former_{t}channel_reading;
CREATE TABLE {t}frame (
    {key} INTEGER NOT NULL REFERENCES {key},
    number INTEGER NOT NULL,
    next_sequence INTEGER NOT NULL,
    until_nanos INTEGER NOT NULL,
    samples BLOB NOT NULL,
    events BLOB NOT NULL,
    PRIMARY KEY ({key}, number)
) STRICT, WITHOUT ROWID;
CREATE TABLE {t}sample_block (
    id INTEGER PRIMARY KEY,
    {key} INTEGER NOT NULL REFERENCES {key},
    probe INTEGER NOT NULL,
    number INTEGER NOT NULL,
    low_nanos INTEGER NOT NULL,
    high_nanos INTEGER NOT NULL,
    summary BLOB NOT NULL,
    block BLOB NOT NULL,
    UNIQUE ({key}, probe, number)
) STRICT;
CREATE INDEX {t}sample_block_time ON {t}sample_block ({key}, probe, high_nanos, low_nanos);
CREATE TABLE {t}summary (
    id INTEGER PRIMARY KEY,
    {key} INTEGER NOT NULL REFERENCES {key},
    probe INTEGER NOT NULL,
    level INTEGER NOT NULL,
    number INTEGER NOT NULL,
    low_nanos INTEGER NOT NULL,
    high_nanos INTEGER NOT NULL,
    block BLOB NOT NULL,
    UNIQUE ({key}, probe, level, number, low_nanos, high_nanos)
) STRICT;
CREATE TABLE {t}rejected (
    {key} INTEGER NOT NULL REFERENCES {key},
    batch INTEGER NOT NULL,
    part INTEGER NOT NULL,
    probe INTEGER NOT NULL,
    time_nanos INTEGER NOT NULL,
    stream_offset INTEGER NOT NULL,
    reason TEXT NOT NULL,
    PRIMARY KEY ({key}, batch, part)
) STRICT, WITHOUT ROWID;
CREATE TABLE {t}reading (
    {key} INTEGER NOT NULL REFERENCES {key},
    batch INTEGER NOT NULL,
    part INTEGER NOT NULL,
    step TEXT NOT NULL,
    purpose TEXT NOT NULL,
    time_nanos INTEGER NOT NULL,
    by_hand INTEGER NOT NULL,
    hand_reason TEXT NOT NULL,
    PRIMARY KEY ({key}, batch, part)
) STRICT, WITHOUT ROWID;
CREATE TABLE {t}channel_reading (
    {key} INTEGER NOT NULL,
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
    PRIMARY KEY ({key}, batch, part, position),
    FOREIGN KEY ({key}, batch, part) REFERENCES {t}reading
) STRICT, WITHOUT ROWID;
INSERT INTO {t}rejected SELECT * FROM former_{t}rejected;
INSERT INTO {t}reading SELECT * FROM former_{t}reading;
INSERT INTO {t}channel_reading SELECT * FROM former_{t}channel_reading;
DROP TABLE former_{t}channel_reading;
DROP TABLE former_{t}reading;
DROP TABLE former_{t}rejected;

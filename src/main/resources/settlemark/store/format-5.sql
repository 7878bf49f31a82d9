CREATE TABLE instrument (
    serial TEXT PRIMARY KEY,
    name TEXT NOT NULL,
    kind TEXT NOT NULL,
    calibrated TEXT,
    due TEXT,
    battery_percent REAL,
    battery_at TEXT
) STRICT;
CREATE TABLE correction_point (
    serial TEXT NOT NULL REFERENCES instrument ON DELETE CASCADE,
    position INTEGER NOT NULL,
    channel TEXT NOT NULL,
    true_value REAL NOT NULL,
    indicated REAL NOT NULL,
    uncertainty REAL NOT NULL,
    unit TEXT NOT NULL,
    PRIMARY KEY (serial, position)
) STRICT, WITHOUT ROWID;
CREATE TABLE instrument_zero (
    serial TEXT NOT NULL REFERENCES instrument ON DELETE CASCADE,
    channel TEXT NOT NULL,
    zero REAL NOT NULL,
    unit TEXT NOT NULL,
    taken_at TEXT NOT NULL,
    session TEXT NOT NULL,
    PRIMARY KEY (serial, channel)
) STRICT, WITHOUT ROWID;

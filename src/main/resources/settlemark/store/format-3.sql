ALTER TABLE session ADD COLUMN keeps_bytes INTEGER NOT NULL DEFAULT 1;
ALTER TABLE event RENAME TO former_event;
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

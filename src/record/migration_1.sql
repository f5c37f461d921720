-- Times of day are RFC 9557 texts with their time zone; seconds (…_s) are on the sample clock of a part.
CREATE TABLE client (
    id INTEGER PRIMARY KEY,
    name TEXT NOT NULL UNIQUE
) STRICT;

CREATE TABLE session (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    client INTEGER NOT NULL REFERENCES client (id),
    routine_title TEXT NOT NULL,
    routine_text TEXT NOT NULL, -- the file as prescribed
    source TEXT NOT NULL CHECK (source IN ('live', 'replay', 'rehearsal')),
    software TEXT NOT NULL,
    started_at TEXT NOT NULL,
    ended_at TEXT,
    end_reason TEXT,
    CHECK ((ended_at IS NULL) = (end_reason IS NULL))
) STRICT;
CREATE INDEX session_by_client ON session (client, id);

-- A session that was interrupted and gone on with has several parts, each with its own sample clock from 0.
CREATE TABLE part (
    session INTEGER NOT NULL REFERENCES session (id),
    number INTEGER NOT NULL CHECK (number >= 1),
    started_at TEXT NOT NULL,
    PRIMARY KEY (session, number)
) STRICT, WITHOUT ROWID;

CREATE TABLE entry (
    session INTEGER NOT NULL,
    seq INTEGER NOT NULL CHECK (seq >= 1),
    part INTEGER NOT NULL,
    at_s REAL NOT NULL,
    kind TEXT NOT NULL,
    step INTEGER,
    set_no INTEGER,
    repetition INTEGER,
    json TEXT NOT NULL CHECK (json_valid(json)),
    PRIMARY KEY (session, seq),
    FOREIGN KEY (session, part) REFERENCES part (session, number),
    CHECK ((step IS NULL) = (set_no IS NULL) AND (step IS NULL) = (repetition IS NULL))
) STRICT, WITHOUT ROWID;

CREATE TRIGGER entry_is_never_changed BEFORE UPDATE ON entry
BEGIN SELECT RAISE(ABORT, 'the journal is append-only'); END;
CREATE TRIGGER entry_is_never_removed BEFORE DELETE ON entry
BEGIN SELECT RAISE(ABORT, 'the journal is append-only'); END;

-- Also where a row is replaced, for which no trigger of removal is asked.
CREATE TRIGGER entry_is_only_added BEFORE INSERT ON entry
WHEN NEW.seq <= (SELECT coalesce(max(seq), 0) FROM entry WHERE session = NEW.session)
BEGIN SELECT RAISE(ABORT, 'the journal is append-only'); END;

CREATE TABLE agreement (
    client INTEGER NOT NULL REFERENCES client (id),
    exercise TEXT NOT NULL,
    session INTEGER NOT NULL REFERENCES session (id),
    given_at TEXT NOT NULL,
    PRIMARY KEY (client, exercise, session)
) STRICT, WITHOUT ROWID;

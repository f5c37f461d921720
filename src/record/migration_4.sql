-- Sound of practices: kept only while the client's page and the client's voice both say so, and not for ever.

-- What was asked on the page and answered by voice; of each client the last row counts.
CREATE TABLE sound_consent (
    number INTEGER PRIMARY KEY AUTOINCREMENT,
    client INTEGER NOT NULL REFERENCES client (id),
    days INTEGER NOT NULL CHECK (days BETWEEN 1 AND 3650), -- how long sound is kept
    by_page_at TEXT NOT NULL,
    by_voice_at TEXT,
    by_voice INTEGER CHECK (by_voice IN (0, 1)),
    withdrawn_at TEXT,
    withdrawn_by TEXT CHECK (withdrawn_by IN ('page', 'voice', 'command')),
    CHECK ((by_voice_at IS NULL) = (by_voice IS NULL) AND (withdrawn_at IS NULL) = (withdrawn_by IS NULL))
) STRICT;
CREATE INDEX sound_consent_by_client ON sound_consent (client, number);

-- One file of sound each, in the folder `sound` beside the record. The row is there before the file and goes after it.
CREATE TABLE stored_sound (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    session INTEGER NOT NULL REFERENCES session (id),
    part INTEGER NOT NULL,
    file TEXT NOT NULL UNIQUE,
    from_s REAL NOT NULL, -- its first sample on the sample clock of the part
    samples INTEGER NOT NULL, -- what of it is surely in the file, and
    bytes INTEGER NOT NULL, -- so many bytes of FLAC
    rate_hz INTEGER NOT NULL,
    made_at TEXT NOT NULL,
    expires_at TEXT NOT NULL,
    FOREIGN KEY (session, part) REFERENCES part (session, number)
) STRICT;
CREATE INDEX stored_sound_by_session ON stored_sound (session, part);

-- The key of sound files that are encrypted. It is made by chance and no passphrase leads to it: a new passphrase for the record
-- does not touch them.
CREATE TABLE sound_key (
    id INTEGER PRIMARY KEY CHECK (id = 1),
    key BLOB NOT NULL CHECK (length(key) = 32)
) STRICT;

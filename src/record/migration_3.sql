-- Packages and results between a clinician's computer and a home computer. Keys are public halves only, hexadecimal.

-- The clinician's side: what was made, and the key that its results must be sealed with.
CREATE TABLE package_made (
    id TEXT PRIMARY KEY,
    client INTEGER NOT NULL REFERENCES client (id),
    made_at TEXT NOT NULL,
    reply_key TEXT NOT NULL UNIQUE
) STRICT, WITHOUT ROWID;

-- The home computer's side: what was taken. The last one taken is in force.
CREATE TABLE package_taken (
    number INTEGER PRIMARY KEY AUTOINCREMENT,
    id TEXT NOT NULL,
    client INTEGER NOT NULL REFERENCES client (id),
    made_at TEXT NOT NULL,
    taken_at TEXT NOT NULL,
    clinician_key TEXT NOT NULL
) STRICT;
CREATE INDEX package_taken_by_client ON package_taken (client, number);

-- What a clinician agreed to in a package; counts while that package is in force.
CREATE TABLE package_agreement (
    package INTEGER NOT NULL REFERENCES package_taken (number),
    exercise TEXT NOT NULL,
    agreed_at TEXT NOT NULL,
    agreed_by TEXT NOT NULL, -- fingerprint of the clinician's key
    PRIMARY KEY (package, exercise)
) STRICT, WITHOUT ROWID;

CREATE TRIGGER package_taken_is_never_changed BEFORE UPDATE ON package_taken
BEGIN SELECT RAISE(ABORT, 'what was taken is append-only'); END;
CREATE TRIGGER package_taken_is_never_removed BEFORE DELETE ON package_taken
BEGIN SELECT RAISE(ABORT, 'what was taken is append-only'); END;
CREATE TRIGGER package_agreement_is_never_changed BEFORE UPDATE ON package_agreement
BEGIN SELECT RAISE(ABORT, 'what was agreed is append-only'); END;
CREATE TRIGGER package_agreement_is_never_removed BEFORE DELETE ON package_agreement
BEGIN SELECT RAISE(ABORT, 'what was agreed is append-only'); END;

-- The home computer's side: how much of a practice has been handed back.
CREATE TABLE handed_back (
    session INTEGER NOT NULL REFERENCES session (id),
    entries INTEGER NOT NULL,
    ended INTEGER NOT NULL CHECK (ended IN (0, 1)),
    handed_at TEXT NOT NULL,
    PRIMARY KEY (session, entries, ended)
) STRICT, WITHOUT ROWID;

-- The clinician's side: practices that were led elsewhere.
CREATE TABLE received (
    session INTEGER PRIMARY KEY REFERENCES session (id),
    number INTEGER NOT NULL, -- in the home computer's record
    package TEXT -- in force when it was led
) STRICT;

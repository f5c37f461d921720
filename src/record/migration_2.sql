-- How a client says the commands, kept with the client's spoken consent and deleted on demand (`tidecount enrol --forget`).
-- A picture is the strength of 23 bands of pitch every 10 ms; the sound itself is never kept.
CREATE TABLE own_word (
    client INTEGER NOT NULL REFERENCES client (id),
    command TEXT NOT NULL, -- its kebab-case name
    wording TEXT NOT NULL, -- what was said
    source TEXT NOT NULL CHECK (source IN ('live', 'replay', 'rehearsal')),
    agreed_at TEXT NOT NULL, -- when the client said yes
    said_at TEXT NOT NULL,
    PRIMARY KEY (client, command)
) STRICT, WITHOUT ROWID;

CREATE TABLE own_take (
    client INTEGER NOT NULL,
    command TEXT NOT NULL,
    number INTEGER NOT NULL CHECK (number >= 1),
    picture BLOB NOT NULL,
    PRIMARY KEY (client, command, number),
    FOREIGN KEY (client, command) REFERENCES own_word (client, command) ON DELETE CASCADE
) STRICT, WITHOUT ROWID;

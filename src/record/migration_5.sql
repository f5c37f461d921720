-- What a person agreed to or withdrew on a page: of each client and exercise the last row counts, against what was said aloud too.
CREATE TABLE page_agreement (
    number INTEGER PRIMARY KEY AUTOINCREMENT,
    client INTEGER NOT NULL REFERENCES client (id),
    exercise TEXT NOT NULL,
    given INTEGER NOT NULL CHECK (given IN (0, 1)), -- 0: withdrawn
    agreed_by TEXT NOT NULL, -- who agreed, as it was typed
    at TEXT NOT NULL
) STRICT;
CREATE INDEX page_agreement_by_client ON page_agreement (client, exercise, number);
CREATE TRIGGER page_agreement_is_never_changed BEFORE UPDATE ON page_agreement
BEGIN SELECT RAISE(ABORT, 'what was agreed is append-only'); END;

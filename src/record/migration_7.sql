-- Sessions that were a baseline or a re-test and no practice; they stand in no figure of practice.
CREATE TABLE assessment (
    session INTEGER PRIMARY KEY REFERENCES session (id),
    protocol TEXT NOT NULL -- name of what was led
) STRICT;
CREATE TRIGGER assessment_is_never_changed BEFORE UPDATE ON assessment
BEGIN SELECT RAISE(ABORT, 'the record is append-only'); END;

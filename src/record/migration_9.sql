-- Checksums (SHA-256) against bits that flip on the disk. Those of a practice's entries form a chain: each is made over the one before and
-- its own row. They go with their practice, so forgetting one client leaves the chains of all others whole.
CREATE TABLE entry_sum (
    session INTEGER NOT NULL,
    seq INTEGER NOT NULL,
    sum BLOB NOT NULL CHECK (length(sum) = 32),
    PRIMARY KEY (session, seq),
    FOREIGN KEY (session, seq) REFERENCES entry (session, seq)
) STRICT, WITHOUT ROWID;

-- Over what else is kept of a practice: whose it is, its routine, its times, its parts, where it came from.
CREATE TABLE practice_sum (
    session INTEGER PRIMARY KEY REFERENCES session (id),
    sum BLOB NOT NULL CHECK (length(sum) = 32)
) STRICT;

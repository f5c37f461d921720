-- `condition` of a trial, `routine` of a session and `look` of an event are numbers of rows of the same client. They are not declared as
-- references: forgetting a client would look through all trials of the others for each of them.
-- Days are local dates, times RFC 9557 texts with their zone. NULL: could not be measured, or was not said.
-- A clinician's computer, known by the public key that seals its packages.
CREATE TABLE desk (
    id INTEGER PRIMARY KEY,
    key TEXT NOT NULL UNIQUE,
    name TEXT NOT NULL
) STRICT;

-- Known by the packages that were made for them. Two desks, or two people after each other at one desk, may have the same name.
CREATE TABLE client (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    desk INTEGER NOT NULL REFERENCES desk (id),
    name TEXT NOT NULL
) STRICT;
CREATE INDEX client_by_name ON client (name);
CREATE INDEX client_by_desk ON client (desk);

CREATE TABLE package (
    id TEXT NOT NULL PRIMARY KEY,
    client INTEGER NOT NULL REFERENCES client (id),
    reply_key TEXT NOT NULL UNIQUE,
    made_at TEXT NOT NULL
) STRICT, WITHOUT ROWID;
CREATE INDEX package_by_client ON package (client);

-- Packages of clients who were forgotten on purpose: chance numbers that say nothing of anybody, so that nothing comes back.
CREATE TABLE forgotten (
    package TEXT NOT NULL PRIMARY KEY,
    reply_key TEXT NOT NULL UNIQUE
) STRICT, WITHOUT ROWID;

-- Files of results that were taken in.
CREATE TABLE arrival (
    client INTEGER NOT NULL REFERENCES client (id),
    hash TEXT NOT NULL,
    package TEXT NOT NULL,
    made_at TEXT NOT NULL,
    sessions INTEGER NOT NULL,
    PRIMARY KEY (client, hash)
) STRICT, WITHOUT ROWID;

CREATE TABLE routine (
    id INTEGER PRIMARY KEY,
    client INTEGER NOT NULL REFERENCES client (id),
    hash TEXT NOT NULL,
    title TEXT NOT NULL,
    body TEXT NOT NULL,
    UNIQUE (client, hash)
) STRICT;

-- `marks`: a hash of each journal entry, `part_starts`: one time a line.
CREATE TABLE session (
    id INTEGER PRIMARY KEY,
    client INTEGER NOT NULL REFERENCES client (id),
    started_at TEXT NOT NULL,
    number INTEGER NOT NULL,
    day TEXT NOT NULL,
    began_s INTEGER NOT NULL,
    ended_at TEXT,
    end_reason TEXT,
    routine INTEGER NOT NULL,
    package TEXT,
    software TEXT NOT NULL,
    entries INTEGER NOT NULL,
    marks BLOB NOT NULL,
    practised_s REAL NOT NULL,
    steps_done INTEGER NOT NULL,
    steps_prescribed INTEGER NOT NULL,
    part_starts TEXT NOT NULL,
    UNIQUE (client, started_at, number)
) STRICT;
CREATE INDEX session_by_time ON session (client, began_s);

-- What figures were taken under, each combination once.
CREATE TABLE condition (
    id INTEGER PRIMARY KEY,
    client INTEGER NOT NULL REFERENCES client (id),
    label TEXT NOT NULL,
    weighting TEXT,
    time_weighting TEXT,
    calibration TEXT NOT NULL,
    calibration_note TEXT,
    distance_cm REAL,
    auto_gain INTEGER NOT NULL,
    microphone_system TEXT,
    microphone_name TEXT,
    microphone_rate_hz INTEGER,
    microphone_gain TEXT,
    UNIQUE (client, label)
) STRICT;

-- `discarded`: measures of it that stand in no figure, each with its reason: "level-db=clipped hold-s=cut-off".
CREATE TABLE trial (
    session INTEGER NOT NULL REFERENCES session (id),
    seq INTEGER NOT NULL,
    exercise TEXT NOT NULL,
    kind TEXT NOT NULL,
    part INTEGER NOT NULL,
    at_s REAL NOT NULL,
    step INTEGER,
    set_no INTEGER,
    repetition INTEGER,
    complete INTEGER NOT NULL,
    duration_s REAL,
    prescribed_s REAL,
    level_db REAL,
    level_fall_db REAL,
    level_slope_db_per_s REAL,
    f0_median_hz REAL,
    f0_span_st REAL,
    f0_sd_st REAL,
    rate_hz REAL,
    irregularity_pct REAL,
    breaks INTEGER,
    masked_s REAL,
    clipped_s REAL,
    in_noise INTEGER,
    over_room_db REAL,
    correct INTEGER,
    named INTEGER,
    cpps_db REAL,
    jitter_local_pct REAL,
    shimmer_local_pct REAL,
    hnr_db REAL,
    condition INTEGER,
    discarded TEXT,
    PRIMARY KEY (session, seq)
) STRICT, WITHOUT ROWID;

-- What came of each step that was begun.
CREATE TABLE step (
    session INTEGER NOT NULL REFERENCES session (id),
    step INTEGER NOT NULL,
    exercise TEXT NOT NULL,
    ramp_stage INTEGER,
    done INTEGER NOT NULL,
    prescribed INTEGER,
    stopped TEXT,
    PRIMARY KEY (session, step)
) STRICT, WITHOUT ROWID;

-- When somebody looked at a client and marked it so.
CREATE TABLE look (
    id INTEGER PRIMARY KEY,
    client INTEGER NOT NULL REFERENCES client (id),
    at TEXT NOT NULL,
    note TEXT
) STRICT;
CREATE INDEX look_by_client ON look (client, id);

-- What a clinician wants to be told of; `look` is empty until it was seen.
CREATE TABLE event (
    session INTEGER NOT NULL REFERENCES session (id),
    seq INTEGER NOT NULL,
    client INTEGER NOT NULL REFERENCES client (id),
    kind TEXT NOT NULL,
    what TEXT NOT NULL,
    exercise TEXT,
    day TEXT NOT NULL,
    look INTEGER,
    PRIMARY KEY (session, seq)
) STRICT, WITHOUT ROWID;
CREATE INDEX event_unseen ON event (client) WHERE look IS NULL;
CREATE INDEX event_by_client ON event (client, day);

-- Adherence. `counted`: repetitions done, of each routine at most what was prescribed that day. `planned`: by a plan of days.
CREATE TABLE day (
    client INTEGER NOT NULL REFERENCES client (id),
    day TEXT NOT NULL,
    sessions INTEGER NOT NULL,
    done INTEGER NOT NULL,
    counted INTEGER NOT NULL,
    prescribed INTEGER NOT NULL,
    planned INTEGER NOT NULL,
    PRIMARY KEY (client, day)
) STRICT, WITHOUT ROWID;

CREATE TABLE measure (
    client INTEGER NOT NULL REFERENCES client (id),
    exercise TEXT NOT NULL,
    measure TEXT NOT NULL,
    label TEXT NOT NULL,
    since TEXT NOT NULL,
    until TEXT NOT NULL,
    trials INTEGER NOT NULL,
    baseline REAL,
    latest REAL,
    smallest_change REAL,
    verdict TEXT NOT NULL,
    PRIMARY KEY (client, exercise, measure)
) STRICT, WITHOUT ROWID;

-- One row for each client: all that the caseload needs.
CREATE TABLE digest (
    client INTEGER PRIMARY KEY REFERENCES client (id),
    newest_made_at TEXT,
    follows_newest INTEGER,
    first_day TEXT,
    last_day TEXT,
    known_to TEXT,
    sessions INTEGER NOT NULL,
    trials INTEGER NOT NULL,
    practised_s REAL NOT NULL,
    planned_week INTEGER,
    gap_days INTEGER NOT NULL,
    recent_counted INTEGER NOT NULL,
    recent_prescribed INTEGER NOT NULL,
    before_counted INTEGER NOT NULL,
    before_prescribed INTEGER NOT NULL,
    planned INTEGER NOT NULL,
    dizzy INTEGER NOT NULL,
    pain INTEGER NOT NULL,
    help INTEGER NOT NULL,
    last_safety TEXT,
    left_out INTEGER NOT NULL,
    left_out_what TEXT,
    tired INTEGER NOT NULL,
    fallen INTEGER NOT NULL,
    fallen_what TEXT,
    risen INTEGER NOT NULL,
    microphone TEXT NOT NULL,
    microphone_since TEXT,
    clock_wrong INTEGER NOT NULL,
    fresh INTEGER NOT NULL,
    seen_day TEXT,
    seen_note TEXT
) STRICT;

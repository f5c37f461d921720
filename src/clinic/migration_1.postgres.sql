CREATE TABLE about (
    application TEXT NOT NULL,
    form BIGINT NOT NULL
);
INSERT INTO about (application, form) VALUES ('tidecount clinic', 1);

-- `condition` of a trial, `routine` of a session and `look` of an event are numbers of rows of the same client. They are not declared as
-- references: forgetting a client would look through all trials of the others for each of them.
-- Days are local dates, times RFC 9557 texts with their zone. NULL: could not be measured, or was not said.
-- A clinician's computer, known by the public key that seals its packages.
CREATE TABLE desk (
    id BIGINT GENERATED ALWAYS AS IDENTITY PRIMARY KEY,
    key TEXT NOT NULL UNIQUE,
    name TEXT NOT NULL
);

-- Known by the packages that were made for them. Two desks, or two people after each other at one desk, may have the same name.
CREATE TABLE client (
    id BIGINT GENERATED ALWAYS AS IDENTITY PRIMARY KEY,
    desk BIGINT NOT NULL REFERENCES desk (id),
    name TEXT NOT NULL
);
CREATE INDEX client_by_name ON client (name);
CREATE INDEX client_by_desk ON client (desk);

CREATE TABLE package (
    id TEXT NOT NULL PRIMARY KEY,
    client BIGINT NOT NULL REFERENCES client (id),
    reply_key TEXT NOT NULL UNIQUE,
    made_at TEXT NOT NULL
);
CREATE INDEX package_by_client ON package (client);

-- Packages of clients who were forgotten on purpose: chance numbers that say nothing of anybody, so that nothing comes back.
CREATE TABLE forgotten (
    package TEXT NOT NULL PRIMARY KEY,
    reply_key TEXT NOT NULL UNIQUE
);

-- Files of results that were taken in.
CREATE TABLE arrival (
    client BIGINT NOT NULL REFERENCES client (id),
    hash TEXT NOT NULL,
    package TEXT NOT NULL,
    made_at TEXT NOT NULL,
    sessions BIGINT NOT NULL,
    PRIMARY KEY (client, hash)
);

CREATE TABLE routine (
    id BIGINT GENERATED ALWAYS AS IDENTITY PRIMARY KEY,
    client BIGINT NOT NULL REFERENCES client (id),
    hash TEXT NOT NULL,
    title TEXT NOT NULL,
    body TEXT NOT NULL,
    UNIQUE (client, hash)
);

-- `marks`: a hash of each journal entry, `part_starts`: one time a line.
CREATE TABLE session (
    id BIGINT GENERATED ALWAYS AS IDENTITY PRIMARY KEY,
    client BIGINT NOT NULL REFERENCES client (id),
    started_at TEXT NOT NULL,
    number BIGINT NOT NULL,
    day TEXT NOT NULL,
    began_s BIGINT NOT NULL,
    ended_at TEXT,
    end_reason TEXT,
    routine BIGINT NOT NULL,
    package TEXT,
    software TEXT NOT NULL,
    entries BIGINT NOT NULL,
    marks BYTEA NOT NULL,
    practised_s DOUBLE PRECISION NOT NULL,
    steps_done BIGINT NOT NULL,
    steps_prescribed BIGINT NOT NULL,
    part_starts TEXT NOT NULL,
    UNIQUE (client, started_at, number)
);
CREATE INDEX session_by_time ON session (client, began_s);

-- What figures were taken under, each combination once.
CREATE TABLE condition (
    id BIGINT GENERATED ALWAYS AS IDENTITY PRIMARY KEY,
    client BIGINT NOT NULL REFERENCES client (id),
    label TEXT NOT NULL,
    weighting TEXT,
    time_weighting TEXT,
    calibration TEXT NOT NULL,
    calibration_note TEXT,
    distance_cm DOUBLE PRECISION,
    auto_gain BIGINT NOT NULL,
    microphone_system TEXT,
    microphone_name TEXT,
    microphone_rate_hz BIGINT,
    microphone_gain TEXT,
    UNIQUE (client, label)
);

-- `discarded`: measures of it that stand in no figure, each with its reason: "level-db=clipped hold-s=cut-off".
CREATE TABLE trial (
    session BIGINT NOT NULL REFERENCES session (id),
    seq INTEGER NOT NULL,
    exercise TEXT NOT NULL,
    kind TEXT NOT NULL,
    part SMALLINT NOT NULL,
    at_s DOUBLE PRECISION NOT NULL,
    step INTEGER,
    set_no INTEGER,
    repetition INTEGER,
    complete SMALLINT NOT NULL,
    duration_s DOUBLE PRECISION,
    prescribed_s DOUBLE PRECISION,
    level_db DOUBLE PRECISION,
    level_fall_db DOUBLE PRECISION,
    level_slope_db_per_s DOUBLE PRECISION,
    f0_median_hz DOUBLE PRECISION,
    f0_span_st DOUBLE PRECISION,
    f0_sd_st DOUBLE PRECISION,
    rate_hz DOUBLE PRECISION,
    irregularity_pct DOUBLE PRECISION,
    breaks INTEGER,
    masked_s DOUBLE PRECISION,
    clipped_s DOUBLE PRECISION,
    in_noise SMALLINT,
    over_room_db DOUBLE PRECISION,
    correct SMALLINT,
    named INTEGER,
    cpps_db DOUBLE PRECISION,
    jitter_local_pct DOUBLE PRECISION,
    shimmer_local_pct DOUBLE PRECISION,
    hnr_db DOUBLE PRECISION,
    condition BIGINT,
    discarded TEXT,
    PRIMARY KEY (session, seq)
);

-- What came of each step that was begun.
CREATE TABLE step (
    session BIGINT NOT NULL REFERENCES session (id),
    step BIGINT NOT NULL,
    exercise TEXT NOT NULL,
    ramp_stage BIGINT,
    done BIGINT NOT NULL,
    prescribed BIGINT,
    stopped TEXT,
    PRIMARY KEY (session, step)
);

-- When somebody looked at a client and marked it so.
CREATE TABLE look (
    id BIGINT GENERATED ALWAYS AS IDENTITY PRIMARY KEY,
    client BIGINT NOT NULL REFERENCES client (id),
    at TEXT NOT NULL,
    note TEXT
);
CREATE INDEX look_by_client ON look (client, id);

-- What a clinician wants to be told of; `look` is empty until it was seen.
CREATE TABLE event (
    session BIGINT NOT NULL REFERENCES session (id),
    seq BIGINT NOT NULL,
    client BIGINT NOT NULL REFERENCES client (id),
    kind TEXT NOT NULL,
    what TEXT NOT NULL,
    exercise TEXT,
    day TEXT NOT NULL,
    look BIGINT,
    PRIMARY KEY (session, seq)
);
CREATE INDEX event_unseen ON event (client) WHERE look IS NULL;
CREATE INDEX event_by_client ON event (client, day);

-- Adherence. `counted`: repetitions done, of each routine at most what was prescribed that day. `planned`: by a plan of days.
CREATE TABLE day (
    client BIGINT NOT NULL REFERENCES client (id),
    day TEXT NOT NULL,
    sessions BIGINT NOT NULL,
    done BIGINT NOT NULL,
    counted BIGINT NOT NULL,
    prescribed BIGINT NOT NULL,
    planned BIGINT NOT NULL,
    PRIMARY KEY (client, day)
);

CREATE TABLE measure (
    client BIGINT NOT NULL REFERENCES client (id),
    exercise TEXT NOT NULL,
    measure TEXT NOT NULL,
    label TEXT NOT NULL,
    since TEXT NOT NULL,
    until TEXT NOT NULL,
    trials BIGINT NOT NULL,
    baseline DOUBLE PRECISION,
    latest DOUBLE PRECISION,
    smallest_change DOUBLE PRECISION,
    verdict TEXT NOT NULL,
    PRIMARY KEY (client, exercise, measure)
);

-- One row for each client: all that the caseload needs.
CREATE TABLE digest (
    client BIGINT PRIMARY KEY REFERENCES client (id),
    newest_made_at TEXT,
    follows_newest BIGINT,
    first_day TEXT,
    last_day TEXT,
    known_to TEXT,
    sessions BIGINT NOT NULL,
    trials BIGINT NOT NULL,
    practised_s DOUBLE PRECISION NOT NULL,
    planned_week BIGINT,
    gap_days BIGINT NOT NULL,
    recent_counted BIGINT NOT NULL,
    recent_prescribed BIGINT NOT NULL,
    before_counted BIGINT NOT NULL,
    before_prescribed BIGINT NOT NULL,
    planned BIGINT NOT NULL,
    dizzy BIGINT NOT NULL,
    pain BIGINT NOT NULL,
    help BIGINT NOT NULL,
    last_safety TEXT,
    left_out BIGINT NOT NULL,
    left_out_what TEXT,
    tired BIGINT NOT NULL,
    fallen BIGINT NOT NULL,
    fallen_what TEXT,
    risen BIGINT NOT NULL,
    microphone TEXT NOT NULL,
    microphone_since TEXT,
    clock_wrong BIGINT NOT NULL,
    fresh BIGINT NOT NULL,
    seen_day TEXT,
    seen_note TEXT
);

-- Classes that were led from a list: who was there and what was led. Nobody is measured in a class.
CREATE TABLE class (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    title TEXT NOT NULL, -- of the list
    routine_title TEXT NOT NULL,
    source TEXT NOT NULL CHECK (source IN ('live', 'replay', 'rehearsal')),
    software TEXT NOT NULL,
    started_at TEXT NOT NULL
) STRICT;

-- Of each participant the last row counts. A row for each is there from the beginning, with nothing said of them.
CREATE TABLE class_attendance (
    number INTEGER PRIMARY KEY AUTOINCREMENT,
    class INTEGER NOT NULL REFERENCES class (id),
    participant TEXT NOT NULL, -- as the class calls them
    present INTEGER CHECK (present IN (0, 1)), -- none where nobody said so
    at_s REAL NOT NULL
) STRICT;
CREATE INDEX class_attendance_by_class ON class_attendance (class, number);

-- Of each step the last row counts: it may be led once more.
CREATE TABLE class_led (
    number INTEGER PRIMARY KEY AUTOINCREMENT,
    class INTEGER NOT NULL REFERENCES class (id),
    step INTEGER NOT NULL,
    exercise TEXT NOT NULL,
    sets INTEGER NOT NULL, -- planned
    repetitions_done INTEGER NOT NULL, -- all sets together
    repetitions_planned INTEGER NOT NULL,
    from_s REAL NOT NULL,
    until_s REAL NOT NULL
) STRICT;
CREATE INDEX class_led_by_class ON class_led (class, number);

CREATE TRIGGER class_is_never_changed BEFORE UPDATE ON class
BEGIN SELECT RAISE(ABORT, 'classes are append-only'); END;
CREATE TRIGGER class_is_never_removed BEFORE DELETE ON class
BEGIN SELECT RAISE(ABORT, 'classes are append-only'); END;
CREATE TRIGGER class_attendance_is_never_changed BEFORE UPDATE ON class_attendance
BEGIN SELECT RAISE(ABORT, 'classes are append-only'); END;
CREATE TRIGGER class_attendance_is_never_removed BEFORE DELETE ON class_attendance
BEGIN SELECT RAISE(ABORT, 'classes are append-only'); END;
CREATE TRIGGER class_led_is_never_changed BEFORE UPDATE ON class_led
BEGIN SELECT RAISE(ABORT, 'classes are append-only'); END;
CREATE TRIGGER class_led_is_never_removed BEFORE DELETE ON class_led
BEGIN SELECT RAISE(ABORT, 'classes are append-only'); END;

-- What clients want to be able to do, in their own words, and what people said of it since. Both are only added to.
CREATE TABLE goal (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    client INTEGER NOT NULL REFERENCES client (id),
    words TEXT NOT NULL, -- the client's own
    exercise TEXT, -- none for an activity, which people judge
    measure TEXT, -- its kebab-case name
    direction TEXT CHECK (direction IN ('at-least', 'at-most')),
    target REAL, -- in the unit of the measure; a level in dB SPL
    set_on TEXT NOT NULL, -- days are ISO 8601 dates
    due TEXT NOT NULL,
    set_by TEXT NOT NULL, -- who set it, as it was typed
    package TEXT, -- the clinician's package that brought it
    CHECK ((exercise IS NULL) = (measure IS NULL) AND (exercise IS NULL) = (direction IS NULL) AND (exercise IS NULL) = (target IS NULL))
) STRICT;
CREATE INDEX goal_by_client ON goal (client, id);

CREATE TABLE goal_mark (
    number INTEGER PRIMARY KEY AUTOINCREMENT,
    goal INTEGER NOT NULL REFERENCES goal (id),
    kind TEXT NOT NULL CHECK (kind IN ('met', 'not-met', 'removed')),
    marked_on TEXT NOT NULL,
    marked_by TEXT NOT NULL -- who marked it, as it was typed
) STRICT;
CREATE INDEX goal_mark_by_goal ON goal_mark (goal, number);

CREATE TRIGGER goal_is_never_changed BEFORE UPDATE ON goal
BEGIN SELECT RAISE(ABORT, 'goals are append-only'); END;
CREATE TRIGGER goal_is_never_removed BEFORE DELETE ON goal
BEGIN SELECT RAISE(ABORT, 'goals are append-only'); END;
CREATE TRIGGER goal_mark_is_never_changed BEFORE UPDATE ON goal_mark
BEGIN SELECT RAISE(ABORT, 'goals are append-only'); END;
CREATE TRIGGER goal_mark_is_never_removed BEFORE DELETE ON goal_mark
BEGIN SELECT RAISE(ABORT, 'goals are append-only'); END;

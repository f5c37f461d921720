-- Warning signs about swallowing that nobody has seen yet: how many, and which.
ALTER TABLE digest ADD COLUMN signs INTEGER NOT NULL DEFAULT 0;
ALTER TABLE digest ADD COLUMN signs_what TEXT;

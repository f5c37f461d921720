-- Warning signs about swallowing that nobody has seen yet: how many, and which.
ALTER TABLE digest ADD COLUMN signs BIGINT NOT NULL DEFAULT 0;
ALTER TABLE digest ADD COLUMN signs_what TEXT;

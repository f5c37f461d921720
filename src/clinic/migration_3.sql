-- Chest pain, no breath, choking and sickness each by itself; they were counted as pain. What nobody has seen yet is counted anew.
-- For both kinds of database: BIGINT is an INTEGER to SQLite.
ALTER TABLE digest ADD COLUMN chest_pain BIGINT NOT NULL DEFAULT 0;
ALTER TABLE digest ADD COLUMN breathless BIGINT NOT NULL DEFAULT 0;
ALTER TABLE digest ADD COLUMN choking BIGINT NOT NULL DEFAULT 0;
ALTER TABLE digest ADD COLUMN sick BIGINT NOT NULL DEFAULT 0;
ALTER TABLE digest ADD COLUMN said_else BIGINT NOT NULL DEFAULT 0;
UPDATE digest SET
    chest_pain = (SELECT count(*) FROM event e WHERE e.client = digest.client AND e.look IS NULL AND e.kind = 'safety' AND e.what = 'chest pain'),
    breathless = (SELECT count(*) FROM event e WHERE e.client = digest.client AND e.look IS NULL AND e.kind = 'safety' AND e.what = 'can''t breathe'),
    choking = (SELECT count(*) FROM event e WHERE e.client = digest.client AND e.look IS NULL AND e.kind = 'safety' AND e.what = 'choking'),
    sick = (SELECT count(*) FROM event e WHERE e.client = digest.client AND e.look IS NULL AND e.kind = 'safety' AND e.what = 'feels sick'),
    pain = (SELECT count(*) FROM event e WHERE e.client = digest.client AND e.look IS NULL AND e.kind = 'safety' AND e.what = 'pain'),
    said_else = (SELECT count(*) FROM event e WHERE e.client = digest.client AND e.look IS NULL AND e.kind = 'safety'
        AND e.what NOT IN ('dizzy', 'pain', 'help', 'chest pain', 'can''t breathe', 'choking', 'feels sick'));

-- Behind the columns, which each engine names by its own types.
UPDATE digest SET
    chest_pain = (SELECT count(*) FROM event e WHERE e.client = digest.client AND e.look IS NULL AND e.kind = 'safety' AND e.what = 'chest pain'),
    breathless = (SELECT count(*) FROM event e WHERE e.client = digest.client AND e.look IS NULL AND e.kind = 'safety' AND e.what = 'can''t breathe'),
    choking = (SELECT count(*) FROM event e WHERE e.client = digest.client AND e.look IS NULL AND e.kind = 'safety' AND e.what = 'choking'),
    sick = (SELECT count(*) FROM event e WHERE e.client = digest.client AND e.look IS NULL AND e.kind = 'safety' AND e.what = 'feels sick'),
    pain = (SELECT count(*) FROM event e WHERE e.client = digest.client AND e.look IS NULL AND e.kind = 'safety' AND e.what = 'pain'),
    said_else = (SELECT count(*) FROM event e WHERE e.client = digest.client AND e.look IS NULL AND e.kind = 'safety'
        AND e.what NOT IN ('dizzy', 'pain', 'help', 'chest pain', 'can''t breathe', 'choking', 'feels sick'));

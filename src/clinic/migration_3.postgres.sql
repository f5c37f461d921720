-- Chest pain, no breath, choking and sickness each by itself; they were counted as pain. What nobody has seen yet is counted anew.
ALTER TABLE digest ADD COLUMN chest_pain BIGINT NOT NULL DEFAULT 0;
ALTER TABLE digest ADD COLUMN breathless BIGINT NOT NULL DEFAULT 0;
ALTER TABLE digest ADD COLUMN choking BIGINT NOT NULL DEFAULT 0;
ALTER TABLE digest ADD COLUMN sick BIGINT NOT NULL DEFAULT 0;
ALTER TABLE digest ADD COLUMN said_else BIGINT NOT NULL DEFAULT 0;

-- Chest pain, no breath, choking and sickness each by itself; they were counted as pain. What nobody has seen yet is counted anew.
ALTER TABLE digest ADD COLUMN chest_pain INTEGER NOT NULL DEFAULT 0;
ALTER TABLE digest ADD COLUMN breathless INTEGER NOT NULL DEFAULT 0;
ALTER TABLE digest ADD COLUMN choking INTEGER NOT NULL DEFAULT 0;
ALTER TABLE digest ADD COLUMN sick INTEGER NOT NULL DEFAULT 0;
ALTER TABLE digest ADD COLUMN said_else INTEGER NOT NULL DEFAULT 0;

-- The work that was done, the parts that went in, what proves it, and what was said at the hand-over.

CREATE TABLE work_item (
  id TEXT PRIMARY KEY,
  visit_id TEXT NOT NULL REFERENCES visit (id),
  position INTEGER NOT NULL,
  finding_id TEXT REFERENCES finding (id),
  words TEXT NOT NULL,
  outcome TEXT NOT NULL CHECK (outcome IN ('done', 'partly', 'not-done')),
  because TEXT NOT NULL,
  written_at_ms INTEGER NOT NULL
) STRICT;
CREATE INDEX work_item_by_visit ON work_item (visit_id);
CREATE INDEX work_item_by_finding ON work_item (finding_id);

CREATE TABLE work_part (
  id TEXT PRIMARY KEY,
  work_item_id TEXT NOT NULL REFERENCES work_item (id),
  position INTEGER NOT NULL,
  words TEXT NOT NULL,
  amount TEXT NOT NULL,
  fitted_part_id TEXT REFERENCES fitted_part (id)
) STRICT;
CREATE INDEX work_part_by_item ON work_part (work_item_id);
CREATE INDEX work_part_by_fitted ON work_part (fitted_part_id);

-- The test after the repair: a reading, or a photo.
CREATE TABLE work_proof (
  id TEXT PRIMARY KEY,
  work_item_id TEXT NOT NULL REFERENCES work_item (id),
  reading_id TEXT REFERENCES reading (id),
  shot_id TEXT REFERENCES shot (id),
  CHECK ((reading_id IS NULL) <> (shot_id IS NULL)),
  UNIQUE (work_item_id, reading_id),
  UNIQUE (work_item_id, shot_id)
) STRICT;
CREATE INDEX work_proof_by_reading ON work_proof (reading_id);
CREATE INDEX work_proof_by_shot ON work_proof (shot_id);

-- One row a visit, named like it.
CREATE TABLE hand_over (
  id TEXT PRIMARY KEY REFERENCES visit (id),
  proved TEXT NOT NULL,
  limits TEXT NOT NULL,
  watch TEXT NOT NULL,
  come_back TEXT NOT NULL,
  old_parts TEXT NOT NULL,
  handed_to TEXT NOT NULL
) STRICT;

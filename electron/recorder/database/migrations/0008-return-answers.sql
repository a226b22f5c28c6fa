-- A machine is back: what became of each finding that an earlier visit left.

CREATE TABLE return_answer (
  id TEXT PRIMARY KEY,
  visit_id TEXT NOT NULL REFERENCES visit (id),
  finding_id TEXT NOT NULL REFERENCES finding (id),
  answer TEXT NOT NULL CHECK (
    answer IN ('same', 'grown', 'smaller', 'repaired-holds', 'repaired-failed', 'not-re-examined', 'part-replaced')
  ),
  because TEXT NOT NULL,
  fitted_part_id TEXT REFERENCES fitted_part (id),
  answered_at_ms INTEGER NOT NULL,
  UNIQUE (visit_id, finding_id)
) STRICT;
CREATE INDEX return_answer_by_finding ON return_answer (finding_id);
CREATE INDEX return_answer_by_part ON return_answer (fitted_part_id);

-- A suspicion that is reversed keeps its history: every turn it took, when each thing bore on it, and what kind of defect is meant.

ALTER TABLE suspicion ADD COLUMN defect TEXT;
-- Null for what was written before anyone kept the time.
ALTER TABLE suspicion_evidence ADD COLUMN at_ms INTEGER;

CREATE TABLE suspicion_turn (
  id TEXT PRIMARY KEY,
  suspicion_id TEXT NOT NULL REFERENCES suspicion (id),
  position INTEGER NOT NULL,
  turn TEXT NOT NULL CHECK (turn IN ('given-up', 'taken-up', 'found')),
  finding_id TEXT REFERENCES finding (id),
  because TEXT NOT NULL,
  at_ms INTEGER,
  CHECK ((finding_id IS NOT NULL) = (turn = 'found'))
) STRICT;
CREATE INDEX suspicion_turn_by_suspicion ON suspicion_turn (suspicion_id);
CREATE INDEX suspicion_turn_by_finding ON suspicion_turn (finding_id);

-- One that was given up before there were turns has taken one.
INSERT INTO suspicion_turn (id, suspicion_id, position, turn, finding_id, because, at_ms)
  SELECT 'turn of ' || id, id, 0, 'given-up', NULL, closed_because, NULL FROM suspicion WHERE closed_because IS NOT NULL;

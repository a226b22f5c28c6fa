-- From complaint to decision: suspicions with what bears on them, steps of the work, repair choices, and what was decided.

CREATE TABLE suspicion (
  id TEXT PRIMARY KEY,
  visit_id TEXT NOT NULL REFERENCES visit (id),
  what TEXT NOT NULL,
  place TEXT,
  closed_because TEXT,
  created_at_ms INTEGER NOT NULL
) STRICT;
CREATE INDEX suspicion_by_visit ON suspicion (visit_id);

CREATE TABLE suspicion_evidence (
  id TEXT PRIMARY KEY,
  suspicion_id TEXT NOT NULL REFERENCES suspicion (id),
  position INTEGER NOT NULL,
  finding_id TEXT REFERENCES finding (id),
  reading_id TEXT REFERENCES reading (id),
  bears TEXT NOT NULL CHECK (bears IN ('for', 'against', 'cannot tell')),
  because TEXT NOT NULL,
  CHECK ((finding_id IS NULL) <> (reading_id IS NULL))
) STRICT;
CREATE INDEX suspicion_evidence_by_suspicion ON suspicion_evidence (suspicion_id);
CREATE INDEX suspicion_evidence_by_finding ON suspicion_evidence (finding_id);
CREATE INDEX suspicion_evidence_by_reading ON suspicion_evidence (reading_id);

CREATE TABLE visit_step (
  id TEXT PRIMARY KEY,
  visit_id TEXT NOT NULL REFERENCES visit (id),
  position INTEGER NOT NULL,
  step TEXT NOT NULL,
  place TEXT
) STRICT;
CREATE INDEX visit_step_by_visit ON visit_step (visit_id);

-- One row a visit, named like it.
CREATE TABLE visit_money (
  id TEXT PRIMARY KEY REFERENCES visit (id),
  currency TEXT NOT NULL,
  tax_percent TEXT
) STRICT;

CREATE TABLE choice (
  id TEXT PRIMARY KEY,
  visit_id TEXT NOT NULL REFERENCES visit (id),
  position INTEGER NOT NULL,
  name TEXT NOT NULL,
  conditions TEXT NOT NULL,
  hold_points TEXT NOT NULL
) STRICT;
CREATE INDEX choice_by_visit ON choice (visit_id);

-- A finding that a choice does not name is left.
CREATE TABLE disposition (
  id TEXT PRIMARY KEY,
  choice_id TEXT NOT NULL REFERENCES choice (id),
  finding_id TEXT NOT NULL REFERENCES finding (id),
  what TEXT NOT NULL CHECK (what IN ('fixed', 'partly', 'left', 'made-safe', 'unknown')),
  after TEXT CHECK (after IS NULL OR json_valid(after)),
  why TEXT NOT NULL,
  UNIQUE (choice_id, finding_id)
) STRICT;
CREATE INDEX disposition_by_finding ON disposition (finding_id);

CREATE TABLE choice_step (
  id TEXT PRIMARY KEY,
  choice_id TEXT NOT NULL REFERENCES choice (id),
  position INTEGER NOT NULL,
  step TEXT NOT NULL,
  place TEXT
) STRICT;
CREATE INDEX choice_step_by_choice ON choice_step (choice_id);

-- Money is decimal text: no binary fraction ever touches it.
CREATE TABLE cost_line (
  id TEXT PRIMARY KEY,
  choice_id TEXT NOT NULL REFERENCES choice (id),
  position INTEGER NOT NULL,
  kind TEXT NOT NULL CHECK (kind IN ('parts', 'labour', 'outside', 'contingency')),
  words TEXT NOT NULL,
  amount TEXT NOT NULL,
  price TEXT NOT NULL
) STRICT;
CREATE INDEX cost_line_by_choice ON cost_line (choice_id);

-- Written once, never changed: `statement` is what was read back, `told` what the finding was then.
CREATE TABLE decision (
  id TEXT PRIMARY KEY,
  visit_id TEXT NOT NULL REFERENCES visit (id),
  finding_id TEXT REFERENCES finding (id),
  choice_id TEXT REFERENCES choice (id),
  decision TEXT NOT NULL CHECK (
    decision IN ('accepted', 'accepted-with-changes', 'declined', 'deferred', 'refused-by-mechanic')
  ),
  completed TEXT NOT NULL,
  words TEXT NOT NULL,
  decided_by TEXT NOT NULL,
  capacity TEXT NOT NULL,
  how_told TEXT NOT NULL,
  shown_shots TEXT NOT NULL CHECK (json_valid(shown_shots)),
  statement TEXT NOT NULL,
  signature TEXT CHECK (signature IS NULL OR json_valid(signature)),
  unsigned_because TEXT NOT NULL,
  told TEXT NOT NULL CHECK (json_valid(told)),
  decided_at_ms INTEGER NOT NULL,
  zone_offset_min INTEGER NOT NULL,
  person_id TEXT REFERENCES person (id),
  CHECK ((finding_id IS NULL) <> (choice_id IS NULL))
) STRICT;
CREATE INDEX decision_by_visit ON decision (visit_id);
CREATE INDEX decision_by_finding ON decision (finding_id);
CREATE INDEX decision_by_choice ON decision (choice_id);

-- A sheet is filled: limits as the mechanic typed them, results taken over without inputs, and limits remembered for a machine.

ALTER TABLE reading ADD COLUMN limits TEXT NOT NULL DEFAULT '{}' CHECK (json_valid(limits));
ALTER TABLE reading ADD COLUMN taken_over TEXT NOT NULL DEFAULT '{}' CHECK (json_valid(taken_over));

CREATE TABLE remembered_limit (
  id TEXT PRIMARY KEY,
  machine_id TEXT NOT NULL REFERENCES machine (id),
  sheet TEXT NOT NULL,
  result TEXT NOT NULL,
  typed TEXT NOT NULL CHECK (json_valid(typed)),
  UNIQUE (machine_id, sheet, result)
) STRICT;
CREATE INDEX reading_shot_by_shot ON reading_shot (shot_id);

-- Then and now: an earlier visit's photo laid under one of today's, by spots of the part that show in both.

CREATE TABLE comparison (
  id TEXT PRIMARY KEY,
  shot_id TEXT NOT NULL REFERENCES shot (id),
  earlier_shot_id TEXT NOT NULL REFERENCES shot (id),
  pairs TEXT NOT NULL CHECK (json_valid(pairs)),
  UNIQUE (shot_id, earlier_shot_id),
  CHECK (shot_id <> earlier_shot_id)
) STRICT;
CREATE INDEX comparison_by_earlier_shot ON comparison (earlier_shot_id);

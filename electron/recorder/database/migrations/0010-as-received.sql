-- How a machine was received: what others had done to it, its fluids as they were, and the photos of the walk round it.

CREATE TABLE earlier_work (
  id TEXT PRIMARY KEY,
  visit_id TEXT NOT NULL REFERENCES visit (id),
  position INTEGER NOT NULL,
  what TEXT NOT NULL,
  place TEXT,
  did TEXT NOT NULL CHECK (did IN ('changed', 'removed', 'added', 'repaired', 'adjusted', 'not-known')),
  by_whom TEXT NOT NULL,
  when_done TEXT NOT NULL
) STRICT;
CREATE INDEX earlier_work_by_visit ON earlier_work (visit_id);

CREATE TABLE fluid_received (
  id TEXT PRIMARY KEY,
  visit_id TEXT NOT NULL REFERENCES visit (id),
  fluid TEXT NOT NULL CHECK (
    fluid IN ('engine-oil', 'coolant', 'hydraulic-oil', 'fuel', 'gear-oil', 'brake-fluid', 'battery-acid')
  ),
  level TEXT NOT NULL CHECK (level IN ('over', 'at-mark', 'low', 'empty', 'not-looked')),
  look TEXT NOT NULL,
  added TEXT NOT NULL,
  UNIQUE (visit_id, fluid)
) STRICT;

CREATE TABLE arrival_photo (
  id TEXT PRIMARY KEY,
  visit_id TEXT NOT NULL REFERENCES visit (id),
  view TEXT NOT NULL CHECK (
    view IN ('front-left', 'front-right', 'rear-right', 'rear-left', 'plate', 'hour-meter', 'wheels', 'underneath')
  ),
  shot_id TEXT NOT NULL REFERENCES shot (id),
  UNIQUE (visit_id, view)
) STRICT;
CREATE INDEX arrival_photo_by_shot ON arrival_photo (shot_id);

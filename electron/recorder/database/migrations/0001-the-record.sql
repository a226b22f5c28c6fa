-- The whole record: shop, machines, visits, photos, findings, readings, reports and the journal that every change is written into.

CREATE TABLE shop (
  id INTEGER PRIMARY KEY CHECK (id = 1),
  name TEXT NOT NULL,
  address TEXT NOT NULL,
  phone TEXT NOT NULL,
  units TEXT NOT NULL CHECK (units IN ('metric', 'us')),
  paper TEXT NOT NULL CHECK (paper IN ('a4', 'us-letter')),
  time_zone TEXT NOT NULL,
  started INTEGER NOT NULL CHECK (started IN (0, 1)),
  person_id TEXT REFERENCES person (id)
) STRICT;

CREATE TABLE person (
  id TEXT PRIMARY KEY,
  name TEXT NOT NULL,
  trade TEXT NOT NULL,
  here INTEGER NOT NULL CHECK (here IN (0, 1))
) STRICT;

CREATE TABLE instrument (
  id TEXT PRIMARY KEY,
  name TEXT NOT NULL,
  kind TEXT NOT NULL,
  resolution TEXT NOT NULL,
  last_check TEXT
) STRICT;

-- Personal: the journal holds digests of these rows only, so that they can be deleted on request.
CREATE TABLE owner (
  id TEXT PRIMARY KEY,
  name TEXT NOT NULL,
  kind TEXT NOT NULL CHECK (kind IN ('person', 'company')),
  capacity TEXT NOT NULL,
  place TEXT,
  phone TEXT,
  note TEXT
) STRICT;

CREATE TABLE machine (
  id TEXT PRIMARY KEY,
  kind TEXT NOT NULL,
  year TEXT,
  serial TEXT NOT NULL,
  engine_serial TEXT,
  note TEXT,
  bay TEXT,
  created_at_ms INTEGER NOT NULL
) STRICT;
CREATE INDEX machine_by_serial ON machine (serial);

CREATE TABLE ownership (
  id TEXT PRIMARY KEY,
  machine_id TEXT NOT NULL REFERENCES machine (id),
  owner_id TEXT NOT NULL REFERENCES owner (id),
  from_date TEXT,
  until_date TEXT
) STRICT;
CREATE INDEX ownership_by_machine ON ownership (machine_id);

CREATE TABLE meter (
  id TEXT PRIMARY KEY,
  machine_id TEXT NOT NULL REFERENCES machine (id),
  name TEXT NOT NULL,
  offset_hours REAL NOT NULL,
  from_date TEXT,
  until_date TEXT,
  dead INTEGER NOT NULL CHECK (dead IN (0, 1))
) STRICT;
CREATE INDEX meter_by_machine ON meter (machine_id);

CREATE TABLE layout (
  id TEXT PRIMARY KEY,
  machine_id TEXT NOT NULL REFERENCES machine (id),
  version INTEGER NOT NULL CHECK (version >= 1),
  layout TEXT NOT NULL CHECK (json_valid(layout)),
  UNIQUE (machine_id, version)
) STRICT;

CREATE TABLE visit (
  id TEXT PRIMARY KEY,
  machine_id TEXT NOT NULL REFERENCES machine (id),
  layout_id TEXT NOT NULL REFERENCES layout (id),
  person_id TEXT REFERENCES person (id),
  date TEXT NOT NULL,
  complaint TEXT NOT NULL,
  use_road INTEGER NOT NULL CHECK (use_road IN (0, 1)),
  use_slope INTEGER NOT NULL CHECK (use_slope IN (0, 1)),
  use_people_near INTEGER NOT NULL CHECK (use_people_near IN (0, 1)),
  exposure_hours REAL NOT NULL CHECK (exposure_hours > 0),
  conditions TEXT NOT NULL CHECK (json_valid(conditions)),
  meter_id TEXT REFERENCES meter (id),
  meter_typed TEXT NOT NULL,
  meter_reading REAL,
  meter_estimate INTEGER NOT NULL CHECK (meter_estimate IN (0, 1)),
  current_part TEXT,
  opened_at_ms INTEGER NOT NULL,
  left_at_ms INTEGER
) STRICT;
CREATE INDEX visit_by_machine ON visit (machine_id, date);

CREATE TABLE fitted_part (
  id TEXT PRIMARY KEY,
  machine_id TEXT NOT NULL REFERENCES machine (id),
  path TEXT NOT NULL,
  kind TEXT NOT NULL CHECK (kind IN ('new', 'used', 'donor')),
  fitted_visit_id TEXT REFERENCES visit (id),
  fitted_hours REAL,
  removed_visit_id TEXT REFERENCES visit (id),
  removed_hours REAL
) STRICT;
CREATE INDEX fitted_part_by_machine ON fitted_part (machine_id);

CREATE TABLE scope_item (
  id TEXT PRIMARY KEY,
  visit_id TEXT NOT NULL REFERENCES visit (id),
  path TEXT NOT NULL,
  position INTEGER NOT NULL,
  not_examined_because TEXT,
  not_applicable_because TEXT,
  UNIQUE (visit_id, path)
) STRICT;

-- A file's untouched bytes; the row comes after the file is safely on disk.
CREATE TABLE original (
  digest TEXT PRIMARY KEY CHECK (length(digest) = 64),
  byte_length INTEGER NOT NULL,
  media_type TEXT NOT NULL,
  width INTEGER NOT NULL,
  height INTEGER NOT NULL,
  orientation INTEGER NOT NULL CHECK (orientation BETWEEN 1 AND 8),
  camera TEXT,
  remark TEXT
) STRICT;

CREATE TABLE shot (
  id TEXT PRIMARY KEY,
  visit_id TEXT NOT NULL REFERENCES visit (id),
  digest TEXT NOT NULL REFERENCES original (digest),
  sequence INTEGER NOT NULL CHECK (sequence >= 1),
  offered_name TEXT NOT NULL,
  caption TEXT NOT NULL,
  component TEXT,
  seen_from TEXT NOT NULL,
  taken_at_ms INTEGER,
  taken_zone_min INTEGER,
  taken_source TEXT CHECK (taken_source IN ('camera', 'camera-corrected', 'typed', 'clock', 'file')),
  taken_local TEXT,
  camera TEXT,
  clock_offset_ms INTEGER NOT NULL,
  taken_by TEXT REFERENCES person (id),
  binned INTEGER NOT NULL CHECK (binned IN (0, 1)),
  UNIQUE (visit_id, sequence)
) STRICT;
CREATE INDEX shot_by_digest ON shot (digest);

CREATE TABLE finding (
  id TEXT PRIMARY KEY,
  visit_id TEXT NOT NULL REFERENCES visit (id),
  number INTEGER NOT NULL CHECK (number >= 1),
  kind TEXT NOT NULL CHECK (kind IN ('condition', 'observation')),
  defect TEXT,
  words TEXT NOT NULL,
  state TEXT NOT NULL CHECK (state IN ('confirmed', 'suspected', 'not-examined', 'none-found')),
  methods TEXT NOT NULL CHECK (json_valid(methods)),
  quantities TEXT NOT NULL CHECK (json_valid(quantities)),
  safety_judged INTEGER NOT NULL CHECK (safety_judged IN (0, 1)),
  severity INTEGER CHECK (severity BETWEEN 1 AND 4),
  probability TEXT CHECK (probability IN ('A', 'B', 'C', 'D', 'E', 'F')),
  urgency INTEGER CHECK (urgency BETWEEN 0 AND 5),
  run_worse INTEGER CHECK (run_worse IN (0, 1)),
  damage_class INTEGER CHECK (damage_class BETWEEN 1 AND 4),
  facts TEXT NOT NULL CHECK (json_valid(facts)),
  not_examined_because TEXT,
  named_condition_declined_because TEXT,
  if_left TEXT NOT NULL,
  watch_for TEXT NOT NULL,
  action TEXT,
  action_words TEXT NOT NULL,
  do_not_operate INTEGER NOT NULL CHECK (do_not_operate IN (0, 1)),
  do_not_run INTEGER NOT NULL CHECK (do_not_run IN (0, 1)),
  loop_start INTEGER NOT NULL CHECK (loop_start IN (0, 1)),
  found_on TEXT,
  track_of TEXT REFERENCES finding (id),
  supersedes TEXT REFERENCES finding (id),
  superseded_because TEXT,
  moved_before TEXT,
  moved_reason TEXT,
  created_at_ms INTEGER NOT NULL,
  binned INTEGER NOT NULL CHECK (binned IN (0, 1)),
  CHECK ((severity IS NULL) = (probability IS NULL))
) STRICT;
CREATE INDEX finding_by_visit ON finding (visit_id, number);
CREATE INDEX finding_by_track ON finding (track_of);

CREATE TABLE finding_location (
  id TEXT PRIMARY KEY,
  finding_id TEXT NOT NULL REFERENCES finding (id),
  position INTEGER NOT NULL,
  place TEXT NOT NULL,
  UNIQUE (finding_id, position)
) STRICT;

CREATE TABLE finding_link (
  id TEXT PRIMARY KEY,
  from_id TEXT NOT NULL REFERENCES finding (id),
  to_id TEXT NOT NULL REFERENCES finding (id),
  certainty TEXT NOT NULL CHECK (certainty IN ('confirmed', 'suspected')),
  joined_by TEXT NOT NULL CHECK (joined_by IN ('and', 'or')),
  evidence TEXT NOT NULL,
  UNIQUE (from_id, to_id),
  CHECK (from_id <> to_id)
) STRICT;
CREATE INDEX finding_link_to ON finding_link (to_id);

CREATE TABLE calibration (
  id TEXT PRIMARY KEY,
  shot_id TEXT NOT NULL REFERENCES shot (id),
  plane TEXT NOT NULL,
  method TEXT NOT NULL CHECK (method IN ('known-length', 'known-circle', 'known-points')),
  body TEXT NOT NULL CHECK (json_valid(body))
) STRICT;
CREATE INDEX calibration_by_shot ON calibration (shot_id);

CREATE TABLE mark (
  id TEXT PRIMARY KEY,
  shot_id TEXT NOT NULL REFERENCES shot (id),
  finding_id TEXT REFERENCES finding (id),
  shape TEXT NOT NULL CHECK (shape IN ('point', 'line', 'path', 'area', 'arrow', 'span')),
  points TEXT NOT NULL CHECK (json_valid(points)),
  role TEXT NOT NULL CHECK (role IN ('finding', 'calibration', 'matching', 'note')),
  origin TEXT NOT NULL CHECK (json_valid(origin)),
  calibration_id TEXT REFERENCES calibration (id),
  tag_x REAL,
  tag_y REAL,
  note TEXT NOT NULL,
  CHECK ((tag_x IS NULL) = (tag_y IS NULL))
) STRICT;
CREATE INDEX mark_by_shot ON mark (shot_id);
CREATE INDEX mark_by_finding ON mark (finding_id);

CREATE TABLE reading (
  id TEXT PRIMARY KEY,
  visit_id TEXT NOT NULL REFERENCES visit (id),
  sheet TEXT NOT NULL,
  sheet_version INTEGER NOT NULL,
  place TEXT NOT NULL,
  inputs TEXT NOT NULL CHECK (json_valid(inputs)),
  conditions TEXT NOT NULL CHECK (json_valid(conditions)),
  remark TEXT NOT NULL,
  not_taken_because TEXT,
  instrument_id TEXT REFERENCES instrument (id),
  taken_at_ms INTEGER NOT NULL,
  results TEXT NOT NULL CHECK (json_valid(results))
) STRICT;
CREATE INDEX reading_by_visit ON reading (visit_id);

-- What shows a finding (a shot or a reading), and the dial photo of a reading.
CREATE TABLE proof (
  id TEXT PRIMARY KEY,
  finding_id TEXT NOT NULL REFERENCES finding (id),
  shot_id TEXT REFERENCES shot (id),
  reading_id TEXT REFERENCES reading (id),
  CHECK ((shot_id IS NULL) <> (reading_id IS NULL)),
  UNIQUE (finding_id, shot_id),
  UNIQUE (finding_id, reading_id)
) STRICT;
CREATE INDEX proof_by_shot ON proof (shot_id);
CREATE INDEX proof_by_reading ON proof (reading_id);

CREATE TABLE reading_shot (
  id TEXT PRIMARY KEY,
  reading_id TEXT NOT NULL REFERENCES reading (id),
  shot_id TEXT NOT NULL REFERENCES shot (id),
  UNIQUE (reading_id, shot_id)
) STRICT;

-- Issued revisions: the record frozen as canonical JSON and the digests of what was handed over.
CREATE TABLE report (
  id TEXT PRIMARY KEY,
  visit_id TEXT NOT NULL REFERENCES visit (id),
  number INTEGER NOT NULL,
  revision INTEGER NOT NULL CHECK (revision >= 1),
  issued_at_ms INTEGER NOT NULL,
  record TEXT NOT NULL CHECK (json_valid(record)),
  record_digest TEXT NOT NULL,
  pdf_digest TEXT NOT NULL,
  UNIQUE (number, revision)
) STRICT;

CREATE TABLE journal (
  seq INTEGER PRIMARY KEY,
  step_id TEXT NOT NULL,
  at_ms INTEGER NOT NULL,
  zone_offset_min INTEGER NOT NULL,
  person_id TEXT,
  window_id TEXT NOT NULL,
  visit_id TEXT,
  machine_id TEXT,
  operation TEXT NOT NULL,
  undoable INTEGER NOT NULL CHECK (undoable IN (0, 1)),
  reverses TEXT,
  changes TEXT NOT NULL CHECK (json_valid(changes)),
  previous_digest TEXT NOT NULL,
  digest TEXT NOT NULL UNIQUE
) STRICT;
CREATE INDEX journal_by_window ON journal (window_id, visit_id, seq);
CREATE INDEX journal_by_visit ON journal (visit_id, seq);
CREATE INDEX journal_by_machine ON journal (machine_id, seq);
CREATE INDEX journal_by_step ON journal (step_id);

CREATE TRIGGER journal_is_append_only_update BEFORE UPDATE ON journal BEGIN SELECT RAISE(ABORT, 'the journal is append-only'); END;
CREATE TRIGGER journal_is_append_only_delete BEFORE DELETE ON journal BEGIN SELECT RAISE(ABORT, 'the journal is append-only'); END;
CREATE TRIGGER calibration_is_immutable BEFORE UPDATE ON calibration BEGIN SELECT RAISE(ABORT, 'a calibration is immutable'); END;
CREATE TRIGGER report_is_frozen BEFORE UPDATE ON report BEGIN SELECT RAISE(ABORT, 'an issued report is frozen'); END;

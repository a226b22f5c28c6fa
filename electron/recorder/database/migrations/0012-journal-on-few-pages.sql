-- Every change writes its journal entry, and every index of the journal is one page more that must be on the disk before the change is done: two are left.

-- A digest follows from the one before it, so none comes twice; nothing was ever sought by its digest, and dropping that constraint makes the table anew.
CREATE TABLE journal_kept (
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
  digest TEXT NOT NULL
) STRICT;
INSERT INTO journal_kept
  SELECT
    seq, step_id, at_ms, zone_offset_min, person_id, window_id, visit_id, machine_id, operation, undoable, reverses,
    changes, previous_digest, digest
  FROM journal;
DROP TABLE journal;
ALTER TABLE journal_kept RENAME TO journal;

-- A window's steps and the entries of a step are found among those of their visit. Entries of one key stand in the order of `seq`.
CREATE INDEX journal_by_visit ON journal (visit_id);
CREATE INDEX journal_by_machine ON journal (machine_id);

CREATE TRIGGER journal_is_append_only_update BEFORE UPDATE ON journal BEGIN SELECT RAISE(ABORT, 'the journal is append-only'); END;
CREATE TRIGGER journal_is_append_only_delete BEFORE DELETE ON journal BEGIN SELECT RAISE(ABORT, 'the journal is append-only'); END;

-- The shop's own words, read back at the end of every statement.

ALTER TABLE shop ADD COLUMN statement_words TEXT NOT NULL DEFAULT '';

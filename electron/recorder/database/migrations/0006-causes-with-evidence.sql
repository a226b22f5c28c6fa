-- A link from cause to effect names the readings and findings it rests on, and what is known of when each was there: a cause comes before its effect.

ALTER TABLE finding_link ADD COLUMN shown_by TEXT NOT NULL DEFAULT '[]' CHECK (json_valid(shown_by));
ALTER TABLE finding ADD COLUMN noticed_on TEXT;
ALTER TABLE finding ADD COLUMN absent_on TEXT;

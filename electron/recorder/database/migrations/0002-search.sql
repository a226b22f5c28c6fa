-- One search over everything: words of machines, owners, complaints and findings with their spoken places, and serials by fragment.

CREATE TABLE search_document (
  rowid INTEGER PRIMARY KEY,
  record TEXT NOT NULL UNIQUE,
  kind TEXT NOT NULL CHECK (kind IN ('machine', 'visit', 'finding')),
  machine_id TEXT NOT NULL,
  visit_id TEXT,
  finding_id TEXT
) STRICT;
CREATE INDEX search_document_by_machine ON search_document (machine_id);

-- Prefixes are indexed, because a word is searched as it is typed.
CREATE VIRTUAL TABLE search_words USING fts5 (words, tokenize = 'unicode61 remove_diacritics 2', prefix = '1 2 3 4');

-- Fragments of three letters or more, for a serial of which only the middle can be read.
CREATE VIRTUAL TABLE search_serials USING fts5 (serial, tokenize = 'trigram');

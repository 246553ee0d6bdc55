-- AUTOINCREMENT: the number of what was removed is never given again, so that a
-- window that still holds it can't write onto something else.
CREATE TABLE cases (
  id       INTEGER PRIMARY KEY AUTOINCREMENT,
  code     TEXT NOT NULL,
  key      TEXT NOT NULL UNIQUE, -- the code in lower case
  born     TEXT NOT NULL,        -- YYYY-MM or empty
  hand     TEXT NOT NULL,        -- left, right, both
  findings TEXT NOT NULL,
  words    TEXT NOT NULL         -- all that a search looks through, in lower case
);
CREATE TABLE joins (
  id       INTEGER PRIMARY KEY AUTOINCREMENT,
  case_id  INTEGER NOT NULL REFERENCES cases(id) ON DELETE CASCADE,
  hand     TEXT NOT NULL,
  web      INTEGER NOT NULL,
  extent   TEXT NOT NULL,        -- complete, incomplete or empty
  kind     TEXT NOT NULL,        -- simple, complex or empty
  operated TEXT NOT NULL,        -- YYYY-MM-DD or empty
  UNIQUE (case_id, hand, web)
);
CREATE TABLE sittings (
  id      INTEGER PRIMARY KEY AUTOINCREMENT,
  case_id INTEGER NOT NULL REFERENCES cases(id) ON DELETE CASCADE,
  date    TEXT NOT NULL,
  stage   TEXT NOT NULL,         -- before, operation, follow-up
  UNIQUE (case_id, date)
);
CREATE TABLE photographs (
  id       INTEGER PRIMARY KEY AUTOINCREMENT,
  sitting  INTEGER NOT NULL REFERENCES sittings(id) ON DELETE CASCADE,
  hash     TEXT NOT NULL UNIQUE, -- SHA-256 of the copy
  original TEXT NOT NULL,        -- SHA-256 of the file it was taken from
  ext      TEXT NOT NULL,
  hand     TEXT NOT NULL,        -- empty until it is said
  view     TEXT NOT NULL,        -- empty until it is said
  taken    TEXT NOT NULL,
  camera   TEXT NOT NULL,
  width    INTEGER NOT NULL,
  height   INTEGER NOT NULL
);
CREATE INDEX photographs_of_sitting ON photographs(sitting);
CREATE INDEX photographs_by_original ON photographs(original);
CREATE TABLE observers (
  id   INTEGER PRIMARY KEY AUTOINCREMENT,
  name TEXT NOT NULL,
  key  TEXT NOT NULL UNIQUE
);
CREATE TABLE marks (
  id         INTEGER PRIMARY KEY AUTOINCREMENT,
  photograph INTEGER NOT NULL REFERENCES photographs(id) ON DELETE CASCADE,
  observer   INTEGER NOT NULL REFERENCES observers(id),
  revision   INTEGER NOT NULL,
  saved      TEXT NOT NULL,
  text       TEXT NOT NULL,
  UNIQUE (photograph, observer, revision)
);
-- Files about to be written or removed. What is named here and belongs to no
-- photograph was cut short and may be swept away.
CREATE TABLE intents (hash TEXT PRIMARY KEY);

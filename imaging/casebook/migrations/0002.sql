ALTER TABLE sittings ADD COLUMN note TEXT NOT NULL DEFAULT '';
-- Findings on the patient, in the form of package appraisal.
CREATE TABLE appraisals (
  id       INTEGER PRIMARY KEY AUTOINCREMENT,
  sitting  INTEGER NOT NULL REFERENCES sittings(id) ON DELETE CASCADE,
  observer INTEGER NOT NULL REFERENCES observers(id),
  revision INTEGER NOT NULL,
  saved    TEXT NOT NULL,
  text     TEXT NOT NULL,
  UNIQUE (sitting, observer, revision)
);
-- Plans drawn on photographs, as JSON in a form of their own.
CREATE TABLE plans (
  id         INTEGER PRIMARY KEY AUTOINCREMENT,
  photograph INTEGER NOT NULL REFERENCES photographs(id) ON DELETE CASCADE,
  observer   INTEGER NOT NULL REFERENCES observers(id),
  revision   INTEGER NOT NULL,
  saved      TEXT NOT NULL,
  text       TEXT NOT NULL,
  UNIQUE (photograph, observer, revision)
);
-- What the latest marks come to, kept so that it need not be computed again.
-- Nothing here is lost if it is emptied.
CREATE TABLE readings (
  id         INTEGER PRIMARY KEY,
  photograph INTEGER NOT NULL REFERENCES photographs(id) ON DELETE CASCADE,
  observer   INTEGER NOT NULL REFERENCES observers(id),
  marks      TEXT NOT NULL, -- SHA-256 of the marks it was computed from
  way        TEXT NOT NULL, -- the program's way of reading, normal values and settings
  text       TEXT NOT NULL,
  UNIQUE (photograph, observer)
);
-- A reading never outlives its marks, whoever writes them.
CREATE TRIGGER reading_outdated_by_new_marks AFTER INSERT ON marks BEGIN
  DELETE FROM readings WHERE photograph=NEW.photograph AND observer=NEW.observer;
END;
CREATE TRIGGER reading_outdated_by_changed_marks AFTER UPDATE OF text ON marks BEGIN
  DELETE FROM readings WHERE photograph=NEW.photograph AND observer=NEW.observer;
END;
CREATE TRIGGER reading_outdated_by_removed_marks AFTER DELETE ON marks BEGIN
  DELETE FROM readings WHERE photograph=OLD.photograph AND observer=OLD.observer;
END;

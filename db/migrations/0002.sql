-- Corrections by hand, and numbers of one patient. Written by hand; once released never changed.
-- Both are versioned as the tables are: as of batch N holds what since_batch <= N AND N < until_batch.

-- A field of a row that was corrected. The row is named by its table and the number of its identity.
CREATE TABLE correction_id (
  entity INTEGER PRIMARY KEY AUTOINCREMENT,
  of_table TEXT NOT NULL CONSTRAINT correction_id_of_table_codes CHECK (of_table IN ('person', 'bodyMeasure', 'segment', 'visit', 'event', 'score')),
  of_entity INTEGER NOT NULL,
  field TEXT NOT NULL CONSTRAINT correction_id_field_word CHECK (length(field) BETWEEN 2 AND 60 AND field NOT GLOB '*[^0-9A-Za-z]*')
) STRICT;

CREATE UNIQUE INDEX correction_id_natural_key ON correction_id (of_table, of_entity, field);

CREATE TRIGGER correction_id_never_changed BEFORE UPDATE ON correction_id
BEGIN SELECT RAISE(ABORT, 'correction_id: an identity is never changed'); END;

CREATE TRIGGER correction_id_never_deleted BEFORE DELETE ON correction_id
WHEN (SELECT running FROM erasure) = 0
BEGIN SELECT RAISE(ABORT, 'correction_id: an identity goes by erasure alone'); END;

-- What the unit's sheet said when the field was corrected: a sheet that says it again leaves the correction standing.
CREATE TABLE correction (
  entity INTEGER NOT NULL REFERENCES correction_id (entity) ON DELETE RESTRICT,
  since_batch INTEGER NOT NULL,
  until_batch INTEGER NOT NULL,
  sheet ANY CONSTRAINT correction_sheet_value CHECK (typeof(sheet) IN ('null', 'integer', 'real') OR (typeof(sheet) = 'text' AND length(sheet) <= 60 AND sheet NOT GLOB '*[^0-9A-Za-z-]*')),
  reason TEXT NOT NULL CONSTRAINT correction_reason_codes CHECK (reason IN ('typing-error', 'source-checked', 'measured-again', 'wrong-unit', 'wrong-patient', 'clearing', 'other')),
  CONSTRAINT correction_span CHECK (since_batch >= 1 AND since_batch < until_batch AND until_batch <= 2147483647),
  PRIMARY KEY (entity, since_batch),
  UNIQUE (entity, until_batch)
) STRICT;

CREATE TRIGGER correction_closed_once BEFORE UPDATE OF until_batch ON correction
WHEN OLD.until_batch <> 2147483647 OR NEW.until_batch = 2147483647
BEGIN SELECT RAISE(ABORT, 'correction: a version is closed once'); END;

CREATE TRIGGER correction_never_changed BEFORE UPDATE OF entity, since_batch, sheet, reason ON correction
BEGIN SELECT RAISE(ABORT, 'correction: a version is never changed'); END;

CREATE TRIGGER correction_never_deleted BEFORE DELETE ON correction
WHEN (SELECT running FROM erasure) = 0
BEGIN SELECT RAISE(ABORT, 'correction: a version goes by erasure alone'); END;

-- A second number of a patient: its person's rows are read as those of the other, days days later on the other's line.
CREATE TABLE joined (
  entity INTEGER NOT NULL REFERENCES person_id (entity) ON DELETE RESTRICT,
  since_batch INTEGER NOT NULL,
  until_batch INTEGER NOT NULL,
  into_entity INTEGER NOT NULL REFERENCES person_id (entity) ON DELETE RESTRICT,
  days INTEGER NOT NULL CONSTRAINT joined_days_limits CHECK (days BETWEEN -36524 AND 36524),
  CONSTRAINT joined_two CHECK (into_entity <> entity),
  CONSTRAINT joined_span CHECK (since_batch >= 1 AND since_batch < until_batch AND until_batch <= 2147483647),
  PRIMARY KEY (entity, since_batch),
  UNIQUE (entity, until_batch)
) STRICT;

CREATE INDEX joined_into ON joined (into_entity);

CREATE TRIGGER joined_closed_once BEFORE UPDATE OF until_batch ON joined
WHEN OLD.until_batch <> 2147483647 OR NEW.until_batch = 2147483647
BEGIN SELECT RAISE(ABORT, 'joined: a version is closed once'); END;

CREATE TRIGGER joined_never_changed BEFORE UPDATE OF entity, since_batch, into_entity, days ON joined
BEGIN SELECT RAISE(ABORT, 'joined: a version is never changed'); END;

CREATE TRIGGER joined_never_deleted BEFORE DELETE ON joined
WHEN (SELECT running FROM erasure) = 0
BEGIN SELECT RAISE(ABORT, 'joined: a version goes by erasure alone'); END;

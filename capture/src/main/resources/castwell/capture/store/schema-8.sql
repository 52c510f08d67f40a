-- Objects that went through at once: the numbers of a passage's own edges, a JSON array, where others
-- lie among them; else NULL, and all from the first to the last are its own.
ALTER TABLE passage ADD COLUMN own_edges TEXT CHECK (json_valid(own_edges));

-- A board's tick rate is one number for all that it shot in a session: the edges are read once, at
-- the rate known then, and figures follow the rate as it is known better. NULL where both are one.
ALTER TABLE figure ADD COLUMN read_hz REAL;

-- What was known beforehand when a passage's edges were read: the scatter of the places at which the
-- gates trigger, where the session told it; how late the tails come in this session; the length of
-- the arrow that its tags name, and the speed that bow and arrow had shot until then; how often each
-- gate was blocked in the second before by something that was no arrow.
ALTER TABLE figure ADD COLUMN trigger_m REAL;
ALTER TABLE figure ADD COLUMN tail_late_m REAL NOT NULL DEFAULT 0;
ALTER TABLE figure ADD COLUMN tail_late_u_m REAL NOT NULL DEFAULT 0;
ALTER TABLE figure ADD COLUMN tagged_length_m REAL;
ALTER TABLE figure ADD COLUMN cell_speed_mps REAL;
ALTER TABLE figure ADD COLUMN cell_speed_u_mps REAL;
ALTER TABLE figure ADD COLUMN strays_before_a INTEGER NOT NULL DEFAULT 0;
ALTER TABLE figure ADD COLUMN strays_before_b INTEGER NOT NULL DEFAULT 0;

-- What came of it: how much likelier the arrow is than the next best story, as a natural logarithm;
-- how often each gate was blocked by something else.
ALTER TABLE figure ADD COLUMN margin REAL;
ALTER TABLE figure ADD COLUMN strays_a INTEGER NOT NULL DEFAULT 0;
ALTER TABLE figure ADD COLUMN strays_b INTEGER NOT NULL DEFAULT 0;

-- Whether a session's tails are corrected to its fronts, as a person decided; the last row is in force.
CREATE TABLE fronts_decision (
  id INTEGER PRIMARY KEY,
  session_id INTEGER NOT NULL REFERENCES session (id),
  fronts_trusted INTEGER NOT NULL,
  at_ms INTEGER NOT NULL,
  decided_by TEXT NOT NULL
);
CREATE INDEX fronts_decision_last ON fronts_decision (session_id, id);

-- Up to which rules all figures were brought; the last row tells.
CREATE TABLE renewal (
  id INTEGER PRIMARY KEY,
  rules_version INTEGER NOT NULL,
  passages INTEGER NOT NULL,
  at_ms INTEGER NOT NULL
);

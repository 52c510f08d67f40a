-- The last of one weighing holds; without any it counts.
CREATE TABLE weighing_decision (
  id INTEGER PRIMARY KEY,
  weighing_id INTEGER NOT NULL REFERENCES weighing (id),
  set_aside INTEGER NOT NULL CHECK (set_aside IN (0, 1)),
  why TEXT NOT NULL,
  at_ms INTEGER NOT NULL,
  said_by TEXT NOT NULL
);
CREATE INDEX weighing_decision_last ON weighing_decision (weighing_id, id);

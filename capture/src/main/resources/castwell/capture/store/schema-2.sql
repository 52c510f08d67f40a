-- Speeds read off another display: passages without edges of ours, so that tags, decisions, sessions
-- and exports treat them as any other. What was read is the raw fact.
ALTER TABLE passage ALTER COLUMN board_id DROP NOT NULL;
ALTER TABLE passage ALTER COLUMN boot DROP NOT NULL;
ALTER TABLE passage ALTER COLUMN first_edge DROP NOT NULL;
ALTER TABLE passage ALTER COLUMN last_edge DROP NOT NULL;
ALTER TABLE passage ALTER COLUMN first_ticks DROP NOT NULL;
ALTER TABLE passage ALTER COLUMN listening_id DROP NOT NULL;
ALTER TABLE passage ALTER COLUMN calibration_id DROP NOT NULL;

CREATE TABLE reading (
  passage_id INTEGER PRIMARY KEY REFERENCES passage (id),
  speed_mps REAL CHECK (speed_mps > 0),
  speed_u_own_mps REAL NOT NULL CHECK (speed_u_own_mps >= 0),
  speed_u_common_mps REAL NOT NULL CHECK (speed_u_common_mps >= 0),
  note TEXT NOT NULL,
  source TEXT NOT NULL,
  entered_ms INTEGER NOT NULL,
  entered_by TEXT NOT NULL
);

ALTER TABLE bow_state ADD COLUMN nock_to_nock_m REAL CHECK (nock_to_nock_m > 0);
ALTER TABLE bow_state ADD COLUMN string_follow_m REAL;
ALTER TABLE bow_state ADD COLUMN brace_height_m REAL CHECK (brace_height_m > 0);
ALTER TABLE bow_state ADD COLUMN mass_kg REAL CHECK (mass_kg > 0);
ALTER TABLE bow_state ADD COLUMN wood TEXT;
ALTER TABLE bow_state ADD COLUMN tip_width_m REAL CHECK (tip_width_m > 0);
ALTER TABLE bow_state ADD COLUMN string_mass_kg REAL CHECK (string_mass_kg > 0);

ALTER TABLE arrow_entry ADD COLUMN point TEXT;
ALTER TABLE arrow_entry ADD COLUMN note TEXT;

-- Force-draw curves: of several for one bow state the last entered holds.
CREATE TABLE force_draw (
  id INTEGER PRIMARY KEY,
  bow_id INTEGER NOT NULL REFERENCES bow (id),
  state_since_ms INTEGER NOT NULL,
  entered_ms INTEGER NOT NULL,
  entered_by TEXT NOT NULL
);
CREATE INDEX force_draw_of_state ON force_draw (bow_id, state_since_ms, id);

CREATE TABLE force_draw_point (
  force_draw_id INTEGER NOT NULL REFERENCES force_draw (id),
  draw_length_m REAL NOT NULL CHECK (draw_length_m > 0),
  draw_n REAL NOT NULL CHECK (draw_n >= 0),
  let_down_n REAL CHECK (let_down_n >= 0),
  PRIMARY KEY (force_draw_id, draw_length_m)
) WITHOUT ROWID;

-- All that one bow shot, by the tag in force.
CREATE INDEX shot_tag_bow ON shot_tag (bow_id, passage_id);

-- Times ending in _ms are UTC milliseconds since 1970; everything else is SI.

-- Boards. A series is an unbroken run of boot numbers: a board whose boot counter was reset, or a
-- second board of the same name, begins a new one, so that (board, boot, number) names an edge for ever.
CREATE TABLE board (
  id INTEGER PRIMARY KEY,
  device TEXT NOT NULL,
  series INTEGER NOT NULL,
  UNIQUE (device, series)
);

-- One stretch of listening with one monotonic clock: a run of the daemon, or a recording.
CREATE TABLE listening (
  id INTEGER PRIMARY KEY,
  station TEXT NOT NULL,
  source TEXT NOT NULL,
  started_ms INTEGER NOT NULL,
  UNIQUE (station, source, started_ms)
);

CREATE TABLE identity (
  board_id INTEGER NOT NULL REFERENCES board (id),
  boot INTEGER NOT NULL,
  listening_id INTEGER NOT NULL REFERENCES listening (id),
  received_us INTEGER NOT NULL,
  protocol INTEGER NOT NULL,
  firmware TEXT NOT NULL,
  hz INTEGER NOT NULL,
  latency_a_ns INTEGER NOT NULL,
  latency_b_ns INTEGER NOT NULL,
  keep INTEGER NOT NULL,
  cause TEXT NOT NULL,
  PRIMARY KEY (board_id, boot, listening_id)
) WITHOUT ROWID;

CREATE TABLE edge (
  board_id INTEGER NOT NULL REFERENCES board (id),
  boot INTEGER NOT NULL,
  number INTEGER NOT NULL,
  gate TEXT NOT NULL CHECK (gate IN ('A', 'B')),
  kind TEXT NOT NULL CHECK (kind IN ('B', 'C', 'G')),
  ticks INTEGER NOT NULL,
  late INTEGER NOT NULL,
  PRIMARY KEY (board_id, boot, number)
) WITHOUT ROWID;

CREATE TABLE missing (
  board_id INTEGER NOT NULL REFERENCES board (id),
  boot INTEGER NOT NULL,
  first INTEGER NOT NULL,
  last INTEGER NOT NULL,
  PRIMARY KEY (board_id, boot, first, last)
) WITHOUT ROWID;

CREATE TABLE loss (
  board_id INTEGER NOT NULL REFERENCES board (id),
  boot INTEGER NOT NULL,
  gate TEXT NOT NULL CHECK (gate IN ('A', 'B')),
  first_ticks INTEGER NOT NULL,
  last_ticks INTEGER NOT NULL,
  count INTEGER NOT NULL,
  PRIMARY KEY (board_id, boot, gate, first_ticks, last_ticks)
) WITHOUT ROWID;

CREATE TABLE heartbeat (
  board_id INTEGER NOT NULL REFERENCES board (id),
  boot INTEGER NOT NULL,
  ticks48 INTEGER NOT NULL,
  listening_id INTEGER NOT NULL REFERENCES listening (id),
  received_us INTEGER NOT NULL,
  queued INTEGER NOT NULL,
  bytes INTEGER NOT NULL,
  edges INTEGER NOT NULL,
  merged INTEGER NOT NULL,
  dropped INTEGER NOT NULL,
  blocked_a INTEGER,
  blocked_b INTEGER,
  light_a INTEGER,
  light_b INTEGER,
  supply_mv INTEGER,
  chip_centi_c INTEGER,
  air_centi_c INTEGER,
  humidity_centi_percent INTEGER,
  PRIMARY KEY (board_id, boot, ticks48)
) WITHOUT ROWID;

-- The gates as measured. The one in force at an instant is the last entered of those that hold then;
-- without an end it holds for good.
CREATE TABLE calibration (
  id INTEGER PRIMARY KEY,
  station TEXT NOT NULL,
  valid_from_ms INTEGER NOT NULL,
  valid_to_ms INTEGER CHECK (valid_to_ms > valid_from_ms),
  spacing_m REAL NOT NULL CHECK (spacing_m > 0),
  spacing_u_m REAL NOT NULL CHECK (spacing_u_m >= 0),
  trigger_scatter_m REAL NOT NULL CHECK (trigger_scatter_m >= 0),
  gates_from_bow_m REAL NOT NULL CHECK (gates_from_bow_m >= 0),
  oscillator TEXT NOT NULL CHECK (oscillator IN ('CRYSTAL', 'RESONATOR')),
  entered_ms INTEGER NOT NULL,
  entered_by TEXT NOT NULL
);
CREATE INDEX calibration_in_force ON calibration (station, valid_from_ms, id);

CREATE TABLE bow (
  id INTEGER PRIMARY KEY,
  name TEXT NOT NULL UNIQUE COLLATE NOCASE,
  entered_ms INTEGER NOT NULL
);

CREATE TABLE bow_state (
  id INTEGER PRIMARY KEY,
  bow_id INTEGER NOT NULL REFERENCES bow (id),
  since_ms INTEGER NOT NULL,
  draw_weight_n REAL NOT NULL CHECK (draw_weight_n > 0),
  draw_length_m REAL NOT NULL CHECK (draw_length_m > 0),
  done TEXT NOT NULL,
  entered_ms INTEGER NOT NULL
);
CREATE INDEX bow_state_in_force ON bow_state (bow_id, since_ms, id);

CREATE TABLE arrow (
  id INTEGER PRIMARY KEY,
  name TEXT NOT NULL UNIQUE COLLATE NOCASE,
  entered_ms INTEGER NOT NULL
);

-- What is known of an arrow: the last entry holds for all of its shots.
CREATE TABLE arrow_entry (
  id INTEGER PRIMARY KEY,
  arrow_id INTEGER NOT NULL REFERENCES arrow (id),
  mass_kg REAL NOT NULL CHECK (mass_kg > 0),
  length_m REAL CHECK (length_m > 0),
  diameter_m REAL CHECK (diameter_m > 0),
  entered_ms INTEGER NOT NULL
);
CREATE INDEX arrow_entry_last ON arrow_entry (arrow_id, id);

-- Who shoots what from when on, at one station.
CREATE TABLE tag_change (
  id INTEGER PRIMARY KEY,
  station TEXT NOT NULL,
  at_ms INTEGER NOT NULL,
  bow_id INTEGER REFERENCES bow (id),
  arrow_id INTEGER REFERENCES arrow (id),
  changed_by TEXT NOT NULL
);
CREATE INDEX tag_change_in_force ON tag_change (station, at_ms, id);

CREATE TABLE session (
  id INTEGER PRIMARY KEY,
  station TEXT NOT NULL,
  name TEXT NOT NULL UNIQUE,
  started_ms INTEGER NOT NULL,
  begun_by TEXT NOT NULL
);
CREATE INDEX session_of_station ON session (station, started_ms);

-- How edges were put together: derived, and amended when an edge arrives late. Passages that turned
-- out to be part of another point to it.
CREATE TABLE passage (
  id INTEGER PRIMARY KEY,
  shot_id TEXT NOT NULL UNIQUE,
  board_id INTEGER NOT NULL REFERENCES board (id),
  boot INTEGER NOT NULL,
  first_edge INTEGER NOT NULL,
  last_edge INTEGER NOT NULL,
  first_ticks INTEGER NOT NULL,
  board_restarted INTEGER NOT NULL,
  edges_dropped INTEGER NOT NULL,
  listening_id INTEGER NOT NULL REFERENCES listening (id),
  station TEXT NOT NULL,
  fired_ms INTEGER NOT NULL,
  session_id INTEGER NOT NULL REFERENCES session (id),
  end_number INTEGER NOT NULL,
  calibration_id INTEGER NOT NULL REFERENCES calibration (id),
  part_of INTEGER REFERENCES passage (id)
);
CREATE INDEX passage_edges ON passage (board_id, boot, first_edge);
CREATE INDEX passage_fired ON passage (station, fired_ms);
CREATE INDEX passage_session ON passage (session_id, fired_ms);

-- What the ticks say under one calibration: derived. Those of earlier calibrations stay.
CREATE TABLE figure (
  passage_id INTEGER NOT NULL REFERENCES passage (id),
  calibration_id INTEGER NOT NULL REFERENCES calibration (id),
  rules_version INTEGER NOT NULL,
  hz REAL NOT NULL,
  hz_relative_u REAL NOT NULL,
  air_density REAL NOT NULL,
  speed_mps REAL,
  speed_u_own_mps REAL,
  speed_u_common_mps REAL,
  front_mps REAL,
  front_u_mps REAL,
  tail_mps REAL,
  tail_u_mps REAL,
  length_m REAL,
  length_u_m REAL,
  clean INTEGER NOT NULL,
  verdict TEXT NOT NULL,
  reason TEXT NOT NULL,
  PRIMARY KEY (passage_id, calibration_id)
) WITHOUT ROWID;

-- The tags of a shot: the last row is in force, the history stays.
CREATE TABLE shot_tag (
  id INTEGER PRIMARY KEY,
  passage_id INTEGER NOT NULL REFERENCES passage (id),
  bow_id INTEGER REFERENCES bow (id),
  arrow_id INTEGER REFERENCES arrow (id),
  at_ms INTEGER NOT NULL,
  tagged_by TEXT NOT NULL,
  why TEXT NOT NULL
);
CREATE INDEX shot_tag_last ON shot_tag (passage_id, id);

-- What a person decided about a shot; the last row is in force.
CREATE TABLE decision (
  id INTEGER PRIMARY KEY,
  passage_id INTEGER NOT NULL REFERENCES passage (id),
  decided TEXT NOT NULL CHECK (decided IN ('SET_ASIDE', 'BROUGHT_BACK', 'AS_JUDGED')),
  reason TEXT NOT NULL,
  at_ms INTEGER NOT NULL,
  decided_by TEXT NOT NULL
);
CREATE INDEX decision_last ON decision (passage_id, id);

-- What readers of the live feed are told, in order; the ids let a reader resume.
CREATE TABLE feed (
  id INTEGER PRIMARY KEY AUTOINCREMENT,
  kind TEXT NOT NULL,
  station TEXT NOT NULL,
  passage_id INTEGER REFERENCES passage (id)
);

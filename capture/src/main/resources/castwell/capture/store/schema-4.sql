CREATE TABLE session_note (
  id INTEGER PRIMARY KEY,
  session_id INTEGER NOT NULL REFERENCES session (id),
  note TEXT NOT NULL,
  at_ms INTEGER NOT NULL,
  said_by TEXT NOT NULL
);
CREATE INDEX session_note_last ON session_note (session_id, id);


CREATE TABLE retiring (
  id INTEGER PRIMARY KEY,
  bow_id INTEGER REFERENCES bow (id),
  arrow_id INTEGER REFERENCES arrow (id),
  retired INTEGER NOT NULL CHECK (retired IN (0, 1)),
  at_ms INTEGER NOT NULL,
  said_by TEXT NOT NULL,
  CHECK ((bow_id IS NULL) <> (arrow_id IS NULL))
);
CREATE INDEX retiring_bow ON retiring (bow_id, id);
CREATE INDEX retiring_arrow ON retiring (arrow_id, id);

CREATE TABLE weighing (
  id INTEGER PRIMARY KEY,
  arrow_id INTEGER NOT NULL REFERENCES arrow (id),
  mass_kg REAL NOT NULL CHECK (mass_kg > 0),
  at_ms INTEGER NOT NULL,
  said_by TEXT NOT NULL
);
CREATE INDEX weighing_of ON weighing (arrow_id, id);

CREATE TABLE cell (
  session_id INTEGER NOT NULL REFERENCES session (id),
  bow_id INTEGER NOT NULL REFERENCES bow (id),
  since_ms INTEGER NOT NULL,
  arrow_id INTEGER NOT NULL REFERENCES arrow (id),
  set_up TEXT NOT NULL,
  set_up_u REAL NOT NULL,
  n INTEGER NOT NULL,
  mean_mps REAL,
  sum_squares REAL NOT NULL,
  slowest_mps REAL,
  fastest_mps REAL,
  gates_mean_square REAL NOT NULL,
  set_aside INTEGER NOT NULL,
  PRIMARY KEY (session_id, bow_id, since_ms, arrow_id)
) WITHOUT ROWID;
CREATE INDEX cell_sums ON cell (bow_id, since_ms, arrow_id, set_up, n, mean_mps, sum_squares, slowest_mps, fastest_mps,
  gates_mean_square, set_up_u, set_aside);

CREATE TABLE cell_total (
  bow_id INTEGER NOT NULL REFERENCES bow (id),
  since_ms INTEGER NOT NULL,
  arrow_id INTEGER NOT NULL REFERENCES arrow (id),
  set_up TEXT NOT NULL,
  set_up_u REAL NOT NULL,
  n INTEGER NOT NULL,
  mean_mps REAL,
  sum_squares REAL NOT NULL,
  slowest_mps REAL,
  fastest_mps REAL,
  gates_mean_square REAL NOT NULL,
  set_aside INTEGER NOT NULL,
  PRIMARY KEY (bow_id, since_ms, arrow_id, set_up)
) WITHOUT ROWID;

CREATE TABLE cells_made (
  session_id INTEGER PRIMARY KEY REFERENCES session (id),
  rules INTEGER NOT NULL
);

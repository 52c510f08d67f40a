-- How often the cells of any session were made or unmade: what all sessions together tell is kept with
-- the count that it was made at, and holds while that is the same.
CREATE TABLE cell_changes (
  id INTEGER PRIMARY KEY CHECK (id = 1),
  n INTEGER NOT NULL
);
INSERT INTO cell_changes (id, n) VALUES (1, 0);

-- How days, bows' days and arrows differ: natural logs of relative standard deviations. The season's
-- row has those that are likeliest, its places those that any answer is averaged over.
CREATE TABLE season (
  id INTEGER PRIMARY KEY CHECK (id = 1),
  rules INTEGER NOT NULL,
  cell_changes INTEGER NOT NULL,
  log_day REAL NOT NULL,
  log_bow_day REAL NOT NULL,
  log_arrow REAL NOT NULL
);
CREATE TABLE season_place (
  number INTEGER PRIMARY KEY,
  log_day REAL NOT NULL,
  log_bow_day REAL NOT NULL,
  log_arrow REAL NOT NULL,
  weight REAL NOT NULL
);

-- A session's air, as its boards measured it while it was shot; the mean, humidity from 0 to 1. It may
-- explain what its day was like.
ALTER TABLE cells_made ADD COLUMN celsius REAL;
ALTER TABLE cells_made ADD COLUMN humidity REAL;

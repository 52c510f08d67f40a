-- Readers of the feed who may miss nothing, a broker's publisher for one: the last item each has
-- passed on and had acknowledged. With it the feed is the outbox.
CREATE TABLE feed_place (
  reader TEXT PRIMARY KEY,
  last INTEGER NOT NULL
) WITHOUT ROWID;

-- Who may change things from another computer: keys and the browsers they let in, each kept as a
-- hash alone.
CREATE TABLE access_key (
  id INTEGER PRIMARY KEY,
  hash TEXT NOT NULL UNIQUE,
  made_ms INTEGER NOT NULL
);
CREATE TABLE admission (
  token_hash TEXT PRIMARY KEY,
  access_key_id INTEGER NOT NULL REFERENCES access_key (id),
  since_ms INTEGER NOT NULL
) WITHOUT ROWID;

-- What is to be shot in which order, and what became of it. Where a plan stands follows from its
-- events.
CREATE TABLE plan (
  id INTEGER PRIMARY KEY,
  station TEXT NOT NULL,
  name TEXT NOT NULL,
  made_ms INTEGER NOT NULL,
  made_by TEXT NOT NULL
);
CREATE TABLE plan_turn (
  plan_id INTEGER NOT NULL REFERENCES plan (id),
  number INTEGER NOT NULL CHECK (number > 0),
  bow_id INTEGER NOT NULL REFERENCES bow (id),
  arrow_id INTEGER NOT NULL REFERENCES arrow (id),
  PRIMARY KEY (plan_id, number)
) WITHOUT ROWID;
CREATE TABLE plan_event (
  id INTEGER PRIMARY KEY,
  plan_id INTEGER NOT NULL REFERENCES plan (id),
  kind TEXT NOT NULL CHECK (kind IN ('START', 'SHOT', 'SKIP', 'REPEAT', 'BACK', 'PAUSE', 'TAGS_CHANGED', 'RESUME',
    'END')),
  turn INTEGER NOT NULL,
  passage_id INTEGER REFERENCES passage (id),
  at_ms INTEGER NOT NULL,
  said_by TEXT NOT NULL
);
CREATE INDEX plan_of_station ON plan (station, id);
CREATE INDEX plan_event_of ON plan_event (plan_id, id);

-- Backups that were made and read back.
CREATE TABLE backup (
  id INTEGER PRIMARY KEY,
  at_ms INTEGER NOT NULL,
  path TEXT NOT NULL,
  bytes INTEGER NOT NULL
);

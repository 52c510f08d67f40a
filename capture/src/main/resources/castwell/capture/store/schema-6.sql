-- A bow's last sessions are found without sorting all of them.
CREATE INDEX session_begun ON session (started_ms, id);

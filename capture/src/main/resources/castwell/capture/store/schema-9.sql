-- Whether somebody measured the spacing, and what may make every speed wrong alike. All are NULL in
-- rows of programs that didn't ask: there the usual errors hold, and a spacing that the settings had
-- from the start was measured by nobody.
ALTER TABLE calibration ADD COLUMN spacing_measured INTEGER CHECK (spacing_measured IN (0, 1));
ALTER TABLE calibration ADD COLUMN path_degrees REAL CHECK (path_degrees >= 0);
ALTER TABLE calibration ADD COLUMN out_of_parallel_m REAL CHECK (out_of_parallel_m >= 0);
ALTER TABLE calibration ADD COLUMN off_measured_m REAL CHECK (off_measured_m >= 0);
ALTER TABLE calibration ADD COLUMN rails_per_k REAL CHECK (rails_per_k >= 0);
ALTER TABLE calibration ADD COLUMN rails_span_k REAL CHECK (rails_span_k >= 0);
ALTER TABLE calibration ADD COLUMN latency_unlike_s REAL CHECK (latency_unlike_s >= 0);
ALTER TABLE calibration ADD COLUMN drag_per_m REAL CHECK (drag_per_m >= 0);

-- Of a cell's speeds, which are those at the bow: the share that the air took on the way to the gates
-- and that was added again; 0 where they are those at the gates.
ALTER TABLE cell ADD COLUMN drag REAL NOT NULL DEFAULT 0;
ALTER TABLE cell_total ADD COLUMN drag REAL NOT NULL DEFAULT 0;
DROP INDEX cell_sums;
CREATE INDEX cell_sums ON cell (bow_id, since_ms, arrow_id, set_up, n, mean_mps, sum_squares, slowest_mps, fastest_mps,
  gates_mean_square, set_up_u, set_aside, drag);

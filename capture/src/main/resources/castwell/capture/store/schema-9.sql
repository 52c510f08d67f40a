-- Whether somebody measured the spacing, and what may make every speed wrong alike. All are NULL in
-- rows of programs that didn't ask: there the usual errors hold, and a spacing that the settings had
-- from the start was measured by nobody.
ALTER TABLE calibration ADD COLUMN spacing_measured INTEGER CHECK (spacing_measured IN (0, 1));
ALTER TABLE calibration ADD COLUMN path_rad REAL CHECK (path_rad >= 0);
ALTER TABLE calibration ADD COLUMN out_of_parallel_m REAL CHECK (out_of_parallel_m >= 0);
ALTER TABLE calibration ADD COLUMN off_measured_m REAL CHECK (off_measured_m >= 0);
ALTER TABLE calibration ADD COLUMN rails_per_k REAL CHECK (rails_per_k >= 0);
ALTER TABLE calibration ADD COLUMN rails_span_k REAL CHECK (rails_span_k >= 0);
ALTER TABLE calibration ADD COLUMN latency_unlike_s REAL CHECK (latency_unlike_s >= 0);
ALTER TABLE calibration ADD COLUMN drag_per_m REAL CHECK (drag_per_m >= 0);

-- How evenly a bow bends, how thick its tips are, and how stiff an arrow is: how far a weight bends it
-- at the middle between two supports.
ALTER TABLE bow_state ADD COLUMN tiller_m REAL;
ALTER TABLE bow_state ADD COLUMN tip_thickness_m REAL CHECK (tip_thickness_m > 0);

ALTER TABLE arrow_entry ADD COLUMN spine_m REAL CHECK (spine_m > 0);
ALTER TABLE arrow_entry ADD COLUMN spine_span_m REAL CHECK (spine_span_m > 0);
ALTER TABLE arrow_entry ADD COLUMN spine_weight_n REAL CHECK (spine_weight_n > 0);

/**
 * What one bow does to arrows: energy and virtual mass from the speeds of its cells, cast, reach,
 * the force-draw curve, and what to shoot next. Reports ask here; comparing two bows or two days is
 * {@code compare}'s.
 */
package castwell.analysis.bow;

/**
 * From ticks to a speed, a length and their uncertainty, for one passage through calibrated gates.
 */
package castwell.analysis.speed;

/**
 * The shots of one bow state with one arrow in one session, as values: each shot, or their sums.
 * Nothing is judged here.
 */
package castwell.analysis.cell;

/**
 * A pretended range: an archer, a board and its mishaps, all invented, seen by the rest as one more
 * port.
 */
package castwell.capture.rehearsal;

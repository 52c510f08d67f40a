/**
 * Edges of one boot of one board become passages: told apart by the board's ticks, waited for by
 * the host's clock. Nothing is judged or stored here.
 */
package castwell.capture.assembly;

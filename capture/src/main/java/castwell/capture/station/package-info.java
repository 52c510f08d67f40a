/**
 * One station's state: its board and the board's boots, its link, what is asked of the board, facts
 * that wait. It is asked what came out; it calls nobody.
 */
package castwell.capture.station;

/**
 * Holds the shapes that tell how a station is: its board, its place on the disk, its tags, its
 * gates.
 */
package castwell.capture.view.station;

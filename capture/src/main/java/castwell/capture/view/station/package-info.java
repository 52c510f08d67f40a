/** How a station stands: its board, its place on the disk, its tags, its gates. */
package castwell.capture.view.station;

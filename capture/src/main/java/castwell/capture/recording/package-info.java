/** Recordings of what a port said: written, checked, read. */
package castwell.capture.recording;

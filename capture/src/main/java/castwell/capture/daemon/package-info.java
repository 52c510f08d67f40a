/**
 * The loop alone: signals in, each station's five steps, what waits for the disk, and replaying a
 * recording through the same.
 */
package castwell.capture.daemon;

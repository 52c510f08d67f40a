/**
 * Time: what instant the host's monotonic clock means, whether the computer's clock was set, and
 * how fast a board's counter runs against it.
 */
package castwell.capture.clock;

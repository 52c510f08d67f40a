/**
 * Time: what instant the host's monotonic clock means, whether the computer's clock was set, how
 * fast a board's counter runs against it, and how long to wait before something is tried again.
 */
package castwell.capture.clock;

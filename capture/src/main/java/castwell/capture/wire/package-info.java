/**
 * Bytes become sentences of the serial protocol; whatever isn't one is counted by its name and
 * skipped.
 */
package castwell.capture.wire;

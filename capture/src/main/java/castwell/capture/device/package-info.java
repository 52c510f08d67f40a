/**
 * Where bytes come from: serial ports, found, opened, read and opened again. What the bytes mean is
 * {@code wire}'s.
 */
package castwell.capture.device;

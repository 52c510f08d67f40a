/**
 * Figures from raw facts: for a live passage, anew after a calibration or a retag, and to verify
 * what is stored.
 */
package castwell.capture.derive;

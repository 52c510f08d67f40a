/**
 * Reads a sheet as text: its headings, its columns and units, its lines and what is wrong with
 * them. What the lines mean is up to {@code intake}.
 */
package castwell.capture.intake.sheet;

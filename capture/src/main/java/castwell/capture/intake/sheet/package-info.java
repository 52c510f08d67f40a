/**
 * A sheet as text: its headings, its columns and units, its lines and what is wrong with them. What
 * the lines mean is {@code intake}'s.
 */
package castwell.capture.intake.sheet;

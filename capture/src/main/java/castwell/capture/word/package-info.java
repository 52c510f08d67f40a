/**
 * Writes small things alike everywhere: durations, rounded figures, dates, the nearest word, text
 * that a spreadsheet would run.
 */
package castwell.capture.word;

/**
 * Sums up cells: they are made from shots, kept in the store, and made anew when anything that they
 * sum up has changed. Reports read them here; how strays are found is in {@code analysis}.
 */
package castwell.capture.cell;

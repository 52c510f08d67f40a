/**
 * Sums of cells: made from shots, kept in the store, made anew when anything that they tell has
 * changed. Reports read them here; how strays are found is {@code analysis}'s.
 */
package castwell.capture.cell;

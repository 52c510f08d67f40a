/**
 * Which shots of a cell or a session don't belong there: one test a file. They find; setting aside
 * is the caller's.
 */
package castwell.analysis.outlier;

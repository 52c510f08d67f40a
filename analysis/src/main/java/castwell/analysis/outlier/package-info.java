/**
 * Which of a bow's shots are likely strays, and the tests for one cell alone, one a file. They
 * find; setting aside is the caller's.
 */
package castwell.analysis.outlier;

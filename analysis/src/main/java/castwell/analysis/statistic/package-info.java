/**
 * General statistics, one a file, each with its formula and its source. Intervals and p values of
 * results are {@code uncertainty}'s.
 */
package castwell.analysis.statistic;

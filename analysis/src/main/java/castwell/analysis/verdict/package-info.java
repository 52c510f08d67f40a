/**
 * Why a passage doesn't count: one rule a file, in the order that {@code Judge} lists. A verdict
 * gives reasons as phrases, in no language.
 */
package castwell.analysis.verdict;

/**
 * Numerical methods that know nothing of bows: a factor of a matrix, the top of a density, a sum's
 * variance.
 */
package castwell.analysis.numeric;

/** Numerical methods that know nothing of bows: a factor of a matrix, the top of a density. */
package castwell.analysis.numeric;

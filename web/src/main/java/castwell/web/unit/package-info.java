/**
 * Writes figures in trade units or SI, as the reader likes, with as many digits as their
 * uncertainty allows.
 */
package castwell.web.unit;

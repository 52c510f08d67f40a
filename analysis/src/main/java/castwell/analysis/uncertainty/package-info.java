/**
 * A value with all that is uncertain about it, kept apart by source, so that what two results have
 * in common cancels in their difference.
 */
package castwell.analysis.uncertainty;

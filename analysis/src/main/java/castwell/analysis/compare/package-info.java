/**
 * One bow against another, before against after, and the plan that would tell them apart.
 * Everything is made of the results that {@code bow} gives.
 */
package castwell.analysis.compare;

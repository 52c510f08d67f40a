/**
 * Derives a plan's state from its events alone. What a person may do with a plan is in {@code
 * command}.
 */
package castwell.capture.plan;

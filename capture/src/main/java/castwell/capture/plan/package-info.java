/** Where a plan stands, from its events alone. What a person may do to one is {@code command}'s. */
package castwell.capture.plan;

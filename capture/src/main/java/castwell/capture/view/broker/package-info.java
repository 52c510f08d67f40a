/**
 * What a broker is told under each topic, and what may be said to us over it; when it is told is
 * known by whoever publishes.
 */
package castwell.capture.view.broker;

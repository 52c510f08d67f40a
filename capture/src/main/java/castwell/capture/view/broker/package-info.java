/**
 * What a broker is told and what may be said to us over it; under which topics is known by whoever
 * publishes.
 */
package castwell.capture.view.broker;

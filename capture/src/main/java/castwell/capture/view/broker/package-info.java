/**
 * Holds the shapes of what a broker is told and of what others may tell us over it. Whoever
 * publishes knows the topics.
 */
package castwell.capture.view.broker;

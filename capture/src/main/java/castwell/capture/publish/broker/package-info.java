/**
 * Holds one connection to a broker (MQTT 5), and everything that works around the library for it.
 * What is sent over it is up to {@code publish}.
 */
package castwell.capture.publish.broker;

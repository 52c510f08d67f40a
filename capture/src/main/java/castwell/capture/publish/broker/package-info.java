/**
 * One connection to a broker (MQTT 5), and all that works around the library that speaks it. What
 * is said over it is {@code publish}'s.
 */
package castwell.capture.publish.broker;

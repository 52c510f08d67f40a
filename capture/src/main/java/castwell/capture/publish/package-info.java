/**
 * Tells a broker what happens, topic by topic, from the stored feed on, and hears boards over a
 * broker.
 */
package castwell.capture.publish;

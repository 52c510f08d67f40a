/**
 * What a broker is told, topic by topic, from the stored feed on; and boards that are heard over a
 * broker.
 */
package castwell.capture.publish;

/**
 * Certificates and keys are read here, for whoever speaks TLS: to a broker or as a web server. What
 * is wrong with a file is said by whoever asked for it.
 */
package castwell.capture.tls;

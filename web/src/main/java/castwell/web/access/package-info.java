/**
 * Knows keys, browsers that were let in, attempts, and where a request comes from, without HTTP.
 * Who may do what is decided in {@code http.guard}.
 */
package castwell.web.access;

/** What went wrong, as a JSON problem (RFC 9457). */
package castwell.web.http.problem;

/**
 * The API, one thing a file: a request is read and checked, a command or the store is asked, a
 * record goes back.
 */
package castwell.web.http.api;

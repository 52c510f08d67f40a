/**
 * Reads what somebody sent into a request, and says in a sentence what is wrong with it. What it
 * means is decided elsewhere.
 */
package castwell.capture.view.request;

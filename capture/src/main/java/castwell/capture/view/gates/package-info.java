/** Holds the shapes of what a session's shots tell of their gates. */
package castwell.capture.view.gates;

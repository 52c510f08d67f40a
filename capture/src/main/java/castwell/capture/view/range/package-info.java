/** Holds the shapes of what the range page shows at one moment, and of sessions. */
package castwell.capture.view.range;

/** What the range page shows at one moment, and sessions. */
package castwell.capture.view.range;

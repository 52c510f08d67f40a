/** What the least arrows that reach something tell. */
package castwell.capture.view.report.reach;

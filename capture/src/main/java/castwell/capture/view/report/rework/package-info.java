/** What a rework did. */
package castwell.capture.view.report.rework;

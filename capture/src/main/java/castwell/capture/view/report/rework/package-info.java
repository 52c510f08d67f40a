/** Holds the shapes of the report on a rework. */
package castwell.capture.view.report.rework;

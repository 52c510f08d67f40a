/** Holds the shapes of the report on one bow. */
package castwell.capture.view.report.bow;

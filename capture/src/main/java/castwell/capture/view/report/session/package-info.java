/** Holds the shapes of the report on an outing. */
package castwell.capture.view.report.session;

/** Holds the shapes of the report that ranks a rack. */
package castwell.capture.view.report.ranking;

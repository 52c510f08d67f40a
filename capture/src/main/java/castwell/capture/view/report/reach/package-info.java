/** Holds the shapes of the report on which arrows reach a target. */
package castwell.capture.view.report.reach;

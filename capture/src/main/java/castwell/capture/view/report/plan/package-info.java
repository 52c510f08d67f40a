/** Holds the shapes of the report that designs a plan. */
package castwell.capture.view.report.plan;

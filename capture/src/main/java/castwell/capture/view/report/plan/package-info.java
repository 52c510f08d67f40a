/** What the design of a plan tells. */
package castwell.capture.view.report.plan;

/** What the report of one bow tells. */
package castwell.capture.view.report.bow;

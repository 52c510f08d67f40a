/** What an outing tells. */
package castwell.capture.view.report.session;

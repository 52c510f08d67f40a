/** What one bow does to arrows, and why. */
package castwell.web.report.bow;

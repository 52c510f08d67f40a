/** How many shots see a change, with which arrows, in which order. */
package castwell.web.report.plan;

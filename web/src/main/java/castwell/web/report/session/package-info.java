/** One outing: what was shot, what was set aside, and whether something drifted. */
package castwell.web.report.session;

/** Whether a rework helped, and what of it was the day. */
package castwell.web.report.rework;

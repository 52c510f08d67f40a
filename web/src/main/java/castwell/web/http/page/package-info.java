/**
 * Pages, scripts and styles as files. What stands in a page of the workbench is {@code
 * workbench}'s.
 */
package castwell.web.http.page;

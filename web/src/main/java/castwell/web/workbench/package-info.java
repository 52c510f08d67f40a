/**
 * Fills the pages that look into the store, one a file: what each shows, as a record for its
 * template. How they are served is up to {@code http.page}.
 */
package castwell.web.workbench;

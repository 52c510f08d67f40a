/**
 * The pages that look into the store, one a file: what each shows, as a record for its template.
 * How they are served is {@code http.page}'s.
 */
package castwell.web.workbench;

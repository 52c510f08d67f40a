/**
 * Writes the tables that leave the program as CSV or JSON, with metadata that describe their
 * columns.
 */
package castwell.web.table;

/** Tables that leave the program, as CSV or JSON, with the metadata that tells their columns. */
package castwell.web.table;

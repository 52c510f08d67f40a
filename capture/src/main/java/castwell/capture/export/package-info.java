/** What leaves the program as rows, column by column, with its unit. */
package castwell.capture.export;

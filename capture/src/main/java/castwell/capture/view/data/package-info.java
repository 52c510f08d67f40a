/**
 * Holds the shapes of what is taken in and out (sheets, backups, descriptions of tables), of who is
 * let in, and of what went wrong.
 */
package castwell.capture.view.data;

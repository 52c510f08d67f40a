/**
 * What is brought and taken away: sheets, backups, descriptions of tables; who is let in; and what
 * went wrong.
 */
package castwell.capture.view.data;

/**
 * What all reports share: their parts as sentences and tables, the bows with their cells, and how
 * they are written.
 */
package castwell.web.report;

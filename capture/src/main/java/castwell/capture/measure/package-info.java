/**
 * Holds the catalogue of what may be known of a bow or an arrow, with one entry for each measure,
 * from which table, sheets, exports, requests, forms, pages and reports follow. Nothing is read,
 * checked or shown here.
 */
package castwell.capture.measure;

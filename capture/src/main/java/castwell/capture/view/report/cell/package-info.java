/** Cells, strays and casts, as several reports tell them. */
package castwell.capture.view.report.cell;

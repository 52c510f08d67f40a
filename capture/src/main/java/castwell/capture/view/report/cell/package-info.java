/** Holds the shapes of cells, strays and casts, which several reports share. */
package castwell.capture.view.report.cell;

/** Describes what is in a chart: marks, axes, its sentence and its figures. A script draws it. */
package castwell.web.chart;

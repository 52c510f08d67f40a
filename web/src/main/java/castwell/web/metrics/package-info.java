/** Tells how everything is, in numbers, to whoever collects metrics. */
package castwell.web.metrics;

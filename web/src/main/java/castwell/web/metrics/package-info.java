/** How everything is, in numbers, for whoever gathers such things. */
package castwell.web.metrics;

/** How fast a board's counter runs, from heartbeats that arrive late but never early. */
package castwell.analysis.tickrate;

/** Trade units in terms of SI. Inside, everything is SI. */
package castwell.analysis.unit;

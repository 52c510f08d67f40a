/**
 * What is raw: edges, and the passages that they make up. Everything else in this module is derived
 * from it.
 */
package castwell.analysis.shot;

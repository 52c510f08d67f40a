/**
 * Checks of the gates themselves against physics: local gravity, and a rod that falls through them.
 */
package castwell.analysis.gates;

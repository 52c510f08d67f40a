/**
 * Checks of the gates themselves: against physics (local gravity, and a rod that falls through
 * them), and against what many arrows of a session say of them together.
 */
package castwell.analysis.gates;

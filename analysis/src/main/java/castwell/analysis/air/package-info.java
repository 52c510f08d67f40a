/**
 * The air that an arrow flies through: its density, and what drag takes from a speed on the way.
 * What a session's weather was is told by whoever asks.
 */
package castwell.analysis.air;

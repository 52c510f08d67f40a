package castwell.analysis.speed;

import castwell.analysis.uncertainty.Quantity;

/**
 * One end of the object as one gate saw it.
 *
 * @param seconds the time, from an origin that all crossings of one passage share
 * @param beyondM how far that end had gone beyond the beam when the gate triggered; taken as 0,
 *     uncertain by the trigger scatter
 */
record Crossing(Quantity seconds, Quantity beyondM) {}

/**
 * Stored shots that fit another bow or arrow better than their tags. Whether one does is {@code
 * analysis}'s to say; nothing is changed by it.
 */
package castwell.capture.misfit;

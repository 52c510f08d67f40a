/**
 * Finds stored shots that fit another bow or arrow better than their tags. Whether one does is
 * reckoned in {@code analysis}; nothing is changed here.
 */
package castwell.capture.misfit;

/**
 * Finds stored shots that fit another bow or arrow better than their tags, and those that are
 * likely strays by what was shot so far. Whether one is is reckoned in {@code analysis}; nothing is
 * changed here.
 */
package castwell.capture.misfit;

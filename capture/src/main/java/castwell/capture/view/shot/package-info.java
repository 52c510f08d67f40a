/**
 * A shot, its raw edges and figures, and what may be said of one. Each component of a row is a
 * column of an export.
 */
package castwell.capture.view.shot;

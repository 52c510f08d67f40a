/** Holds the shapes in which bows, arrows and force-draw curves are told, entered and exported. */
package castwell.capture.view.rack;

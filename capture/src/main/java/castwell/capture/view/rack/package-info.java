/** Bows, arrows and force-draw curves as they are told, entered and exported. */
package castwell.capture.view.rack;

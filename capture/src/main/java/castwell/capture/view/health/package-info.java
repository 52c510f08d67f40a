/** Holds the shapes that tell what is well and what isn't. */
package castwell.capture.view.health;

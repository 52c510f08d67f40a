/** Holds the shapes in which plans are made, told and carried on. */
package castwell.capture.view.plan;

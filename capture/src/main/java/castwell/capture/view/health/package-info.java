/** What is well and what is not, as it is told. */
package castwell.capture.view.health;

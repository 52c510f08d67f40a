/**
 * Judges what is well and what isn't, one item a file, each with what to do. Nothing is mended
 * here.
 */
package castwell.capture.health;

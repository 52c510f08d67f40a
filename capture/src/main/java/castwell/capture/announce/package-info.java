/**
 * Who is told after the commit. Listeners return at once and read the stored feed for what it was.
 */
package castwell.capture.announce;

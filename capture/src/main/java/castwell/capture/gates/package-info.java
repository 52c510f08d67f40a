/**
 * What the shots of a session tell of the gates that they went through, and in which phrases. It is
 * reckoned anew whenever it is asked; nothing is stored here.
 */
package castwell.capture.gates;

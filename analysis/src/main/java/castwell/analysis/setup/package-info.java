/**
 * What makes every speed of one set-up of the gates wrong alike, told by no edge: each error with
 * its bound and the uncertainty that follows. How the gates are read is told in the speed's room.
 */
package castwell.analysis.setup;

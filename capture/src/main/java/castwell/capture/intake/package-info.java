/**
 * Takes in what somebody wrote down, from a sheet's lines to the store: as a whole, or not at all
 * and with each bad line named.
 */
package castwell.capture.intake;

/**
 * What somebody wrote down, from a sheet's lines to the store: taken in whole, or not at all with
 * each bad line named.
 */
package castwell.capture.intake;

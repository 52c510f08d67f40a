/**
 * What all sessions together tell of every bow, on any day: fitted to the cells, and kept in the
 * store by how much days, bows' days and arrows were found to differ. The arithmetic is {@code
 * analysis}'s.
 */
package castwell.capture.season;

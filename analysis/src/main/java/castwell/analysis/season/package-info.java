/**
 * What bows do on any day, from all sessions at once: a mixed model on the log of speed, in which
 * the day, the bow on that day, the arrow on that bow and each shot have errors of their own.
 * Answers about today's arrows alone are not made here. {@code Season} is the way in.
 */
package castwell.analysis.season;

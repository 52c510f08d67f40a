package castwell.web.report;

import castwell.analysis.uncertainty.Estimate;

/**
 * A bow's speed with an arrow of so many grains per pound.
 *
 * @param anyDayMps on a typical day, with what days, arrows, gates and the draw weight's scale
 *     leave open
 * @param todayMps on the day it was last shot, with the arrows shot then
 * @param today that session
 * @param isBeyondArrows whether it rests on the curve, since no arrow near that mass was shot
 */
public record CastFigures(
    double gpp,
    double massKg,
    Estimate anyDayMps,
    Estimate todayMps,
    String today,
    boolean isBeyondArrows) {}

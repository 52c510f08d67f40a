package castwell.web.report.plan;

import static castwell.analysis.unit.Units.METRES_PER_FOOT;

import castwell.capture.command.Refused;
import castwell.capture.command.Refused.Why;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/**
 * What is planned.
 *
 * @param bows the first is the one to be reworked, the others are its controls
 * @param changeMps that should be seen; 2 ft/s where {@code changeShare} isn't given either
 * @param changeShare the same as a share of the speed: one of the two
 * @param power how surely, between 0.05 and 1
 * @param sdMps one shot's scatter; from the bow's own shots where it isn't given
 * @param arrows by name; chosen by us where there are none
 * @param sessions before the rework and as many after it, whose chance is asked for
 * @param shots of each arrow from each bow in a session, likewise
 * @param seed of the order
 */
public record Wish(
    List<String> bows,
    OptionalDouble changeMps,
    OptionalDouble changeShare,
    double power,
    OptionalDouble sdMps,
    List<String> arrows,
    OptionalInt sessions,
    OptionalInt shots,
    long seed) {
  public static final double USUAL_CHANGE_FPS = 2;

  private static final double USUAL_POWER = 0.8;
  private static final int MOST = 99;

  /**
   * As asked for in trade units, with what is usual where nothing is said.
   *
   * @param changePercent instead of {@code changeFps}
   */
  public static Wish of(
      String bow,
      List<String> controls,
      OptionalDouble changeFps,
      OptionalDouble changePercent,
      OptionalDouble power,
      OptionalDouble sdFps,
      List<String> arrows,
      OptionalDouble sessions,
      OptionalDouble shots,
      OptionalDouble seed) {
    List<String> bows = new ArrayList<>(List.of(bow));
    bows.addAll(controls);
    return new Wish(
        bows,
        times(METRES_PER_FOOT, changeFps),
        times(0.01, changePercent),
        power.orElse(USUAL_POWER),
        times(METRES_PER_FOOT, sdFps),
        arrows,
        count(sessions),
        count(shots),
        (long) seed.orElse(1));
  }

  private static OptionalDouble times(double unit, OptionalDouble value) {
    return value.isPresent() ? OptionalDouble.of(value.getAsDouble() * unit) : value;
  }

  private static OptionalInt count(OptionalDouble value) {
    if (value.isEmpty()) {
      return OptionalInt.empty();
    }
    double number = value.getAsDouble();
    if (!(number >= 1 && number <= MOST && number == Math.rint(number))) {
      throw Refused.of(Why.INVALID, "refused.plan_days", MOST);
    }
    return OptionalInt.of((int) number);
  }

  /**
   * @param alpha what a power is above
   * @throws Refused for what can't be planned
   */
  void check(double alpha) {
    if (changeMps.isPresent() && changeShare.isPresent()) {
      throw Refused.of(Why.INVALID, "refused.two_changes");
    }
    if (changeMps.orElse(1) == 0 || changeShare.orElse(1) == 0) {
      throw Refused.of(Why.INVALID, "refused.no_change");
    }
    if (!(changeShare.orElse(0) > -1)) {
      throw Refused.of(Why.INVALID, "refused.all_speed");
    }
    if (!(power > alpha && power < 1)) {
      throw Refused.of(Why.INVALID, "refused.power", alpha, power);
    }
    if (sdMps.isPresent() && !(sdMps.getAsDouble() > 0)) {
      throw Refused.of(Why.INVALID, "refused.scatter");
    }
  }
}

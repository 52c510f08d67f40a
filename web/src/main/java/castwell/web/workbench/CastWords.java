package castwell.web.workbench;

import static castwell.web.unit.Dimension.ARROW_MASS;
import static castwell.web.unit.Dimension.MASS_FOR_WEIGHT;
import static castwell.web.unit.Dimension.SPEED;

import castwell.analysis.unit.Units;
import castwell.web.report.AnyDay;
import castwell.web.report.CastFigures;
import castwell.web.text.Speech;
import java.util.ArrayList;
import java.util.List;

/** A bow's cast in words: on any day first, then on its last one. */
final class CastWords {
  private CastWords() {}

  static List<String> of(Speech speech, String bow, AnyDay anyDay, CastFigures cast) {
    List<String> words = new ArrayList<>();
    words.add(
        speech.say(
            "bow.any_day",
            bow,
            speech.plain(MASS_FOR_WEIGHT, cast.gpp() * Units.KILOGRAMS_PER_NEWTON_OF_ONE_GPP),
            speech.plain(ARROW_MASS, cast.massKg()),
            speech.figure(SPEED, cast.anyDayMps()),
            anyDay.sessions()));
    words.add(speech.say("bow.today", cast.today(), speech.figure(SPEED, cast.todayMps())));
    if (cast.isBeyondArrows()) {
      words.add(speech.say("bow.beyond_arrows"));
    }
    return words;
  }
}

package castwell.web.workbench;

import castwell.web.text.Speech;
import castwell.web.unit.Dimension;
import castwell.web.unit.FigureText;
import castwell.web.unit.UnitSystem;
import java.util.OptionalDouble;

/**
 * A field for a number in the person's unit.
 *
 * @param name the API's name, for a number in trade units
 * @param factor turns what is filled in into the API's number
 * @param value as it is now, "" if none is known
 * @param kept the API's number, which is sent while the value is left as it is; "" if none is known
 */
public record NumberInput(
    String name, String label, String unit, double factor, String value, String kept) {
  private static final int SHOWN = 6;
  private static final int EXACT = 15;

  static NumberInput of(
      Speech speech, String name, String key, Dimension dimension, OptionalDouble si) {
    double trade = UnitSystem.TRADE.of(dimension).si();
    return new NumberInput(
        name,
        speech.say(key),
        speech.unit(dimension),
        factor(speech, dimension),
        si.isPresent() ? FigureText.significant(speech.in(dimension, si.getAsDouble()), SHOWN) : "",
        si.isPresent() ? FigureText.significant(si.getAsDouble() / trade, EXACT) : "");
  }

  static double factor(Speech speech, Dimension dimension) {
    return speech.units().of(dimension).si() / UnitSystem.TRADE.of(dimension).si();
  }
}

package castwell.web.workbench;

import castwell.web.text.Speech;
import castwell.web.unit.Dimension;
import castwell.web.unit.UnitSystem;
import java.util.OptionalDouble;

/**
 * A number to be filled in, in the person's unit.
 *
 * @param name the API's, which takes trade units
 * @param factor by which what is filled in becomes the API's number
 * @param value as it is now, "" if none is known
 */
public record Field(String name, String label, String unit, double factor, String value) {

  static Field of(Speech speech, String name, String key, Dimension dimension, OptionalDouble now) {
    String unit = speech.unit(dimension);
    String value = now.isPresent() ? speech.plain(dimension, now).replace(" " + unit, "") : "";
    return new Field(name, speech.say(key), unit, factor(speech, dimension), value);
  }

  static double factor(Speech speech, Dimension dimension) {
    return speech.units().of(dimension).si() / UnitSystem.TRADE.of(dimension).si();
  }
}

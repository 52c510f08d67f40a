package castwell.web.text;

import castwell.analysis.uncertainty.Estimate;
import castwell.analysis.uncertainty.Interval;
import castwell.analysis.uncertainty.Quantity;
import castwell.analysis.wording.Amount;
import castwell.analysis.wording.Phrase;
import castwell.analysis.wording.Wording;
import castwell.web.unit.Dimension;
import castwell.web.unit.FigureText;
import castwell.web.unit.UnitSystem;
import java.util.OptionalDouble;

/** How one person is spoken to: in a language, and in the units of their choice. */
public record Speech(Texts texts, UnitSystem units) implements Wording {
  /**
   * How files, messages and the command line speak, where there is no reader yet who could choose.
   */
  public static final Speech TRADE = new Speech(Texts.chosen(), UnitSystem.TRADE);

  private static final int READ = 6;

  public String say(String key, Object... arguments) {
    return texts.say(key, arguments);
  }

  @Override
  public String say(Phrase phrase) {
    return say(phrase.key(), phrase.values().stream().map(this::told).toArray());
  }

  private Object told(Object value) {
    if (value instanceof Phrase phrase) {
      return say(phrase);
    }
    return value instanceof Amount amount ? plain(dimension(amount), amount.si()) : value;
  }

  private static Dimension dimension(Amount amount) {
    return switch (amount.what()) {
      case SPEED -> Dimension.SPEED;
      case LENGTH -> Dimension.LENGTH;
      case DURATION -> Dimension.DURATION;
    };
  }

  /** A unit's symbol. */
  public String unit(Dimension dimension) {
    return units.of(dimension).symbol();
  }

  /** A value in the person's own unit. */
  public double in(Dimension dimension, double si) {
    return si / units.of(dimension).si();
  }

  /**
   * A figure such as "150.2 ± 0.4 ft/s"; without an uncertainty it has the unit's usual decimals.
   */
  public String figure(Dimension dimension, double si, double uSi) {
    return FigureText.figure(units.of(dimension), si, uSi).orElseGet(this::notKnown);
  }

  public String figure(Dimension dimension, Quantity quantity) {
    return figure(dimension, quantity.value(), quantity.standardUncertainty());
  }

  /**
   * A figure such as "150.2 ft/s (149.1 to 151.3)", with the digits that its interval allows; the
   * value alone where nothing bounds it.
   */
  public String figure(Dimension dimension, Estimate estimate) {
    return FigureText.figure(units.of(dimension), estimate, say("figure.to"))
        .orElseGet(this::notKnown);
  }

  /** Where there is little room: "150.2 ± 1.1 ft/s", with half of the interval. */
  public String plusMinus(Dimension dimension, Estimate estimate) {
    return figure(dimension, estimate.value(), estimate.interval().halfWidth());
  }

  /** A measured figure such as "52.5 lb", without needless zeros. */
  public String plain(Dimension dimension, double si) {
    return FigureText.plain(units.of(dimension), si).orElseGet(this::notKnown);
  }

  public String plain(Dimension dimension, OptionalDouble si) {
    return plain(dimension, si.orElse(Double.NaN));
  }

  /** A figure that a person read off a scale or a rule, such as "500.6 gr", to all its digits. */
  public String measured(Dimension dimension, double si) {
    return FigureText.significant(in(dimension, si), READ) + " " + unit(dimension);
  }

  /** An interval such as "149.1 to 151.3 ft/s". */
  public String interval(Dimension dimension, Interval si) {
    return FigureText.interval(units.of(dimension), si, say("figure.to"))
        .orElseGet(() -> say("figure.cant_tell"));
  }

  private String notKnown() {
    return say("figure.not_known");
  }
}

package castwell.web.workbench;

import castwell.capture.command.Refused;
import castwell.capture.command.Refused.Why;
import castwell.capture.store.Transaction;
import castwell.web.report.ReportRequest;
import castwell.web.text.Speech;
import castwell.web.unit.Dimension;
import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * A request for a page.
 *
 * @param t one reading of the store, from which everything on the page comes
 * @param stations all that there are
 * @param named the variable parts of the path by their names
 * @param question the values of the query by their names
 */
public record PageRequest(
    Transaction t,
    Speech speech,
    ZoneId zone,
    Instant now,
    List<String> stations,
    Map<String, String> named,
    Map<String, List<String>> question) {

  public String say(String key, Object... arguments) {
    return speech.say(key, arguments);
  }

  String named(String part) {
    return named.get(part);
  }

  /** The query's first value of that name; an empty one counts as missing. */
  Optional<String> text(String name) {
    return question.getOrDefault(name, List.of()).stream()
        .map(String::strip)
        .filter(value -> !value.isEmpty())
        .findFirst();
  }

  List<String> texts(String name) {
    return question.getOrDefault(name, List.of()).stream().filter(v -> !v.isBlank()).toList();
  }

  /** A value that was filled in in the person's own unit, in SI units. */
  OptionalDouble quantity(String name, Dimension dimension) {
    OptionalDouble value = number(name);
    return value.isPresent()
        ? OptionalDouble.of(value.getAsDouble() * speech.units().of(dimension).si())
        : value;
  }

  OptionalDouble number(String name) {
    Optional<String> value = text(name);
    if (value.isEmpty()) {
      return OptionalDouble.empty();
    }
    try {
      double number = Double.parseDouble(value.get().replace(',', '.'));
      if (Double.isFinite(number)) {
        return OptionalDouble.of(number);
      }
    } catch (NumberFormatException e) {
      // The exception below says it.
    }
    throw Refused.of(Why.INVALID, "page.no_number", value.get());
  }

  /**
   * How reports are asked from pages: casts are compared at the usual grains per pound and scale.
   */
  ReportRequest request() {
    return ReportRequest.of(
        number("gpp").orElse(ReportRequest.USUAL_GPP), ReportRequest.USUAL_SCALE_U_LB);
  }
}

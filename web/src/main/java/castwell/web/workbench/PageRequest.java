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
 * One asking for a page.
 *
 * @param t all that the page shows is of this one reading
 * @param stations that there are
 * @param named the parts of the path by their names
 * @param question the values asked with, by name
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

  /** The first value that was asked with; what is left empty wasn't asked. */
  Optional<String> text(String name) {
    return question.getOrDefault(name, List.of()).stream()
        .map(String::strip)
        .filter(value -> !value.isEmpty())
        .findFirst();
  }

  List<String> texts(String name) {
    return question.getOrDefault(name, List.of()).stream().filter(v -> !v.isBlank()).toList();
  }

  /** In the person's own unit, as SI. */
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
      // said below
    }
    throw Refused.of(Why.INVALID, "page.no_number", value.get());
  }

  /** Casts are compared at the usual grains per pound, with the usual scale. */
  ReportRequest request() {
    return ReportRequest.of(
        number("gpp").orElse(ReportRequest.USUAL_GPP), ReportRequest.USUAL_SCALE_U_LB);
  }
}

package castwell.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * An exposition read by the rules of the OpenMetrics specification 1.0 (prometheus/OpenMetrics,
 * specification/OpenMetrics.md; the rules here from memory): what breaks one fails the test.
 */
final class OpenMetricsText {
  private static final String NAME = "[a-zA-Z_:][a-zA-Z0-9_:]*";
  private static final Pattern META =
      Pattern.compile("# (TYPE|UNIT|HELP) (" + NAME + ") ?(.*)", Pattern.DOTALL);
  private static final String LABEL = "[a-zA-Z_][a-zA-Z0-9_]*=\"(?:[^\"\\\\\n]|\\\\[\\\\\"n])*\"";
  private static final Pattern SAMPLE =
      Pattern.compile("(" + NAME + ")(\\{(?:" + LABEL + "(?:," + LABEL + ")*)?})? (\\S+)( \\S+)?");
  private static final Map<String, List<String>> SUFFIXES =
      Map.of(
          "gauge", List.of(""),
          "counter", List.of("_total", "_created"),
          "info", List.of("_info"),
          "stateset", List.of(""));

  private final Map<String, Double> values = new LinkedHashMap<>();

  private OpenMetricsText() {}

  static OpenMetricsText parsed(String text) {
    assertThat(text).endsWith("# EOF\n").doesNotContain("\r").doesNotContain("\n\n");
    String[] lines = text.split("\n");
    OpenMetricsText parsed = new OpenMetricsText();
    Map<String, String> types = new HashMap<>();
    Set<String> told = new HashSet<>();
    String family = "";
    for (int i = 0; i < lines.length - 1; i++) {
      Matcher meta = META.matcher(lines[i]);
      if (meta.matches()) {
        if (!meta.group(2).equals(family)) {
          family = meta.group(2);
          assertThat(told.add(family)).as("families aren't interleaved: %s", family).isTrue();
        }
        parsed.describe(meta, types);
      } else {
        parsed.sample(lines[i], family, types);
      }
    }
    return parsed;
  }

  private void describe(Matcher meta, Map<String, String> types) {
    String name = meta.group(2);
    switch (meta.group(1)) {
      case "TYPE" -> {
        assertThat(SUFFIXES).containsKey(meta.group(3));
        assertThat(types.put(name, meta.group(3))).as("one TYPE of %s", name).isNull();
      }
      case "UNIT" -> {
        assertThat(name).endsWith("_" + meta.group(3));
        assertThat(types.get(name)).isNotIn("info", "stateset");
      }
      default -> assertThat(meta.group(3)).endsWith(".");
    }
  }

  private void sample(String line, String family, Map<String, String> types) {
    Matcher sample = SAMPLE.matcher(line);
    assertThat(sample.matches()).as(line).isTrue();
    String type = types.get(family);
    assertThat(type).as("the type of %s comes before it", line).isNotNull();
    assertThat(SUFFIXES.get(type).stream().map(family::concat)).contains(sample.group(1));
    double value = Double.parseDouble(sample.group(3));
    String labels = sample.group(2) == null ? "" : sample.group(2);
    switch (type) {
      case "counter" -> assertThat(value).isNotNegative();
      case "info" -> assertThat(value).isEqualTo(1);
      case "stateset" -> {
        assertThat(value).isIn(0.0, 1.0);
        assertThat(labels).contains(family + "=");
      }
      default -> assertThat(value).isNotNaN();
    }
    assertThat(values.put(sample.group(1) + labels, value)).as("one sample: %s", line).isNull();
  }

  double value(String nameAndLabels) {
    assertThat(values).containsKey(nameAndLabels);
    return values.get(nameAndLabels);
  }
}

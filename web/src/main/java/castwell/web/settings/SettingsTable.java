package castwell.web.settings;

import castwell.capture.word.Nearest;
import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.Function;

/**
 * One table of the settings file. It remembers the keys that were read; {@link #refuseUnknown}
 * refuses all others.
 */
final class SettingsTable {
  private final String file;
  private final String name;
  private final JsonNode node;
  private final Map<String, List<SettingsTable>> known = new TreeMap<>();

  /**
   * @param name as in the file, empty for the file itself
   */
  SettingsTable(String file, String name, JsonNode node) {
    this.file = file;
    this.name = name;
    this.node = node;
  }

  SettingsTable table(String key) {
    JsonNode child = node.path(key);
    if (!child.isMissingNode() && !child.isObject()) {
      throw bad(key, "this is a table: write [" + key + "] on a line of its own");
    }
    SettingsTable table = new SettingsTable(file, key, child);
    known.put(key, List.of(table));
    return table;
  }

  List<SettingsTable> tables(String key) {
    JsonNode child = node.path(key);
    if (!child.isMissingNode() && !child.isArray()) {
      throw bad(key, "there may be several: write [[" + key + "]] on a line of its own");
    }
    List<SettingsTable> tables = new ArrayList<>();
    for (JsonNode element : child) {
      if (!element.isObject()) {
        throw bad(key, "each is a table: write [[" + key + "]] on a line of its own");
      }
      tables.add(new SettingsTable(file, key, element));
    }
    known.put(key, tables);
    return tables;
  }

  double number(String key, double otherwise, double least, double most) {
    known.put(key, List.of());
    JsonNode value = node.path(key);
    if (value.isMissingNode()) {
      return otherwise;
    }
    double number = value.isNumber() ? value.doubleValue() : Double.NaN;
    if (!(number >= least && number <= most)) {
      throw bad(key, "a number from %s to %s belongs here, not %s".formatted(least, most, value));
    }
    return number;
  }

  /** Empty where the file doesn't say. */
  Optional<Boolean> yesOrNo(String key) {
    known.put(key, List.of());
    JsonNode value = node.path(key);
    if (!value.isMissingNode() && !value.isBoolean()) {
      throw bad(key, "true or false belongs here, not " + value);
    }
    return value.isMissingNode() ? Optional.empty() : Optional.of(value.booleanValue());
  }

  <T> T value(String key, String otherwise, Function<String, T> parse) {
    known.put(key, List.of());
    JsonNode value = node.path(key);
    if (!value.isMissingNode() && !value.isTextual()) {
      throw bad(key, "text in quotes belongs here, not " + value);
    }
    try {
      return parse.apply(value.isMissingNode() ? otherwise : value.textValue());
    } catch (IllegalArgumentException e) {
      throw bad(key, e.getMessage());
    }
  }

  BadSettings bad(String key, String what) {
    String sentence = what.endsWith(".") ? what : what + ".";
    return new BadSettings("%s, %s: %s".formatted(file, where(key), sentence));
  }

  private String where(String key) {
    return name.isEmpty() ? key : "[" + name + "] " + key;
  }

  /**
   * Refuses keys that nothing read. Such a key is a typing error, which would silently do nothing.
   */
  void refuseUnknown() {
    node.fieldNames()
        .forEachRemaining(
            key -> {
              if (!known.containsKey(key)) {
                throw bad(
                    key,
                    "there is no such key; the nearest is \""
                        + Nearest.of(key, known.keySet())
                        + "\"");
              }
            });
    known.values().forEach(tables -> tables.forEach(SettingsTable::refuseUnknown));
  }
}

package castwell.capture.recording;

import java.math.BigDecimal;
import java.nio.file.Path;
import java.time.Instant;
import java.time.format.DateTimeParseException;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.TreeMap;
import java.util.regex.Pattern;

/** A recording's header as text: {@code # key: value}, one key a line. */
final class HeaderText {
  static final String VERSION_KEY = "recording";
  static final String VERSION = "1";
  private static final String NAME = "name";
  private static final String STARTED = "started";
  private static final String SPACING = "gate-spacing-mm";
  private static final String SPACING_U = "gate-spacing-u-mm";
  private static final String FROM_BOW = "gates-from-bow-m";
  private static final Pattern DECIMAL = Pattern.compile("[+-]?[0-9]{1,15}(\\.[0-9]{1,30})?");

  private record Entry(long line, String value) {}

  private final Path file;
  private final Map<String, Entry> entries = new LinkedHashMap<>();

  HeaderText(Path file) {
    this.file = file;
  }

  /** Takes one line that starts with {@code #}. */
  void add(long line, String text) throws BadRecording {
    int colon = text.indexOf(':');
    String key = colon < 0 ? "" : text.substring(1, colon).strip();
    if (key.isEmpty()) {
      throw new BadRecording(file, line, "a header line must read \"# key: value\"; mend it.");
    }
    Entry before = entries.putIfAbsent(key, new Entry(line, text.substring(colon + 1).strip()));
    if (before != null) {
      throw new BadRecording(
          file, line, "\"" + key + "\" stands twice in the header; keep only one of them.");
    }
  }

  /** Reads the header from its lines. Call this once they are all added. */
  RecordingHeader read() throws BadRecording {
    Entry version = entries.remove(VERSION_KEY);
    if (version == null) {
      throw new BadRecording(
          file,
          1,
          "not a recording, its header lacks \"# recording: 1\";"
              + " give a file that the command \"record\" wrote.");
    }
    if (!version.value().equals(VERSION)) {
      throw new BadRecording(
          file,
          version.line(),
          "a recording of version \""
              + version.value()
              + "\", and this program reads version 1 only; take a newer program.");
    }
    Entry name = entries.remove(NAME);
    return new RecordingHeader(
        name == null ? file.getFileName().toString().replaceFirst("\\.rec$", "") : name.value(),
        parseStarted(entries.remove(STARTED)),
        takeNumber(SPACING, 3, "above 0"),
        takeNumber(SPACING_U, 3, "at least 0"),
        takeNumber(FROM_BOW, 0, "at least 0"),
        notes());
  }

  private Instant parseStarted(Entry entry) throws BadRecording {
    if (entry == null) {
      throw new BadRecording(
          file,
          1,
          "the header doesn't say when it began;"
              + " add a line such as \"# started: 2026-05-02T09:14:07Z\".");
    }
    try {
      return Instant.parse(entry.value());
    } catch (DateTimeParseException e) {
      throw new BadRecording(
          file,
          entry.line(),
          "\"started\" is \""
              + entry.value()
              + "\", not an instant in UTC; write it as \"2026-05-02T09:14:07Z\".");
    }
  }

  private OptionalDouble takeNumber(String key, int decimalPlacesToSi, String bound)
      throws BadRecording {
    Entry entry = entries.remove(key);
    if (entry == null) {
      return OptionalDouble.empty();
    }
    if (DECIMAL.matcher(entry.value()).matches()) {
      double value = new BigDecimal(entry.value()).movePointLeft(decimalPlacesToSi).doubleValue();
      if (value > 0 || value == 0 && bound.equals("at least 0")) {
        return OptionalDouble.of(value);
      }
    }
    throw new BadRecording(
        file,
        entry.line(),
        "\"" + key + "\" is \"" + entry.value() + "\" and must be a plain number " + bound + ".");
  }

  private Map<String, String> notes() {
    Map<String, String> notes = new LinkedHashMap<>();
    entries.forEach((key, entry) -> notes.put(key, entry.value()));
    return notes;
  }

  /**
   * The text of a header.
   *
   * @throws IllegalArgumentException when a key or value would not read back as it is
   */
  static String write(RecordingHeader header) {
    StringBuilder text = new StringBuilder();
    line(text, VERSION_KEY, VERSION);
    line(text, NAME, header.name());
    line(text, STARTED, header.started().toString());
    header.gateSpacingM().ifPresent(m -> line(text, SPACING, decimal(m, 3)));
    header.gateSpacingUncertaintyM().ifPresent(m -> line(text, SPACING_U, decimal(m, 3)));
    header.gatesFromBowM().ifPresent(m -> line(text, FROM_BOW, decimal(m, 0)));
    new TreeMap<>(header.notes()).forEach((key, value) -> line(text, key, value));
    return text.toString();
  }

  private static String decimal(double si, int places) {
    return new BigDecimal(Double.toString(si)).movePointRight(places).toPlainString();
  }

  private static void line(StringBuilder text, String key, String value) {
    boolean odd = key.isBlank() || key.contains(":") || !key.strip().equals(key);
    if (odd || !value.strip().equals(value) || (key + value).chars().anyMatch(c -> c < ' ')) {
      throw new IllegalArgumentException(
          "\"" + key + ": " + value + "\" can't stand in a recording's header.");
    }
    text.append("# ").append(key).append(": ").append(value).append('\n');
  }
}

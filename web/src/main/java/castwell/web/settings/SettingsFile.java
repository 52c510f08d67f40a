package castwell.web.settings;

import castwell.capture.store.WholeFile;
import com.fasterxml.jackson.core.JsonLocation;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.dataformat.toml.TomlMapper;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;

/** The settings file, in the data folder. */
public final class SettingsFile {
  private static final String NAME = "castwell.toml";

  private SettingsFile() {}

  /**
   * Reads the settings. At the first start the file is written first, with every default explained.
   *
   * @throws BadSettings when something in it is wrong
   * @throws BadSettings when something in it can't be
   */
  public static Settings read(Path folder) {
    return read(folder, System.getenv());
  }

  /**
   * @param environment takes the place of the process's own
   */
  public static Settings read(Path folder, Map<String, String> environment) {
    Path file = folder.resolve(NAME);
    try {
      if (Files.notExists(file)) {
        Files.createDirectories(folder);
        Path part = WholeFile.partOf(file);
        Files.writeString(part, defaults());
        WholeFile.name(part, file);
      }
      return parse(file.toString(), Files.readString(file), environment);
    } catch (CharacterCodingException e) {
      throw new BadSettings(file + " isn't UTF-8 text: save it as such.");
    } catch (IOException e) {
      throw new BadSettings(
          "The settings %s can't be read or written (%s): give yourself the right to, or name another folder with --data."
              .formatted(file, e.getClass().getSimpleName()));
    }
  }

  /** Parses a file with an empty environment. */
  static Settings parse(String name, String text) {
    return parse(name, text, Map.of());
  }

  static Settings parse(String name, String text, Map<String, String> environment) {
    try {
      JsonNode root = new TomlMapper().readTree(text);
      return Settings.of(new SettingsTable(name, "", root), Path.of(name), environment);
    } catch (JsonProcessingException e) {
      String why = e.getOriginalMessage().lines().findFirst().orElse("it can't be read");
      throw new BadSettings(
          "%s, line %d: %s: mend that line, or move the file away to get the defaults back."
              .formatted(name, line(e.getLocation()), why));
    }
  }

  /**
   * The line of a parser's complaint: it places a fault at a line's end at the beginning of the
   * next.
   */
  private static int line(JsonLocation at) {
    return at == null ? 1 : Math.max(1, at.getColumnNr() > 1 ? at.getLineNr() : at.getLineNr() - 1);
  }

  static String defaults() {
    try (InputStream in = SettingsFile.class.getResourceAsStream("defaults.toml")) {
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}

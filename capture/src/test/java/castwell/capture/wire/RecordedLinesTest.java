package castwell.capture.wire;

import static java.nio.charset.StandardCharsets.US_ASCII;
import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.InputStream;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Lines of recorded boards: read as the slow reader reads them, every kind of fault counted. */
class RecordedLinesTest {
  private static final Pattern ESCAPE = Pattern.compile("\\\\x(..)");

  private static String bytesOf(String recording) throws IOException {
    try (InputStream in =
        RecordedLinesTest.class.getResourceAsStream("/recordings/" + recording + ".rec")) {
      return new String(in.readAllBytes(), US_ASCII)
          .lines()
          .filter(line -> !line.startsWith("#"))
          .map(line -> line.substring(line.indexOf(' ') + 1))
          .map(RecordedLinesTest::unescaped)
          .collect(Collectors.joining("\r\n", "", "\r\n"));
    }
  }

  private static String unescaped(String line) {
    return ESCAPE
        .matcher(line)
        .replaceAll(
            found -> {
              char value = (char) Integer.parseInt(found.group(1), 16);
              return value == '\\' || value == '$' ? "\\" + value : String.valueOf(value);
            });
  }

  @ParameterizedTest
  @CsvSource({"clean-five,0", "counter-wrap,0", "resonator-clock,1", "every-trouble-once,5"})
  void areReadAsTheSlowReaderReadsThem(String recording, int kindsOfFault) throws IOException {
    String bytes = bytesOf(recording);
    Heard heard = new Heard().hear(bytes);
    assertThat(heard.sentences).hasSizeGreaterThan(60).isEqualTo(SlowReader.read(bytes));
    assertThat(heard.faults.all())
        .doesNotContainKeys(Fault.BAD_FIELD, Fault.TRUNCATED)
        .hasSize(kindsOfFault);
  }
}

package castwell.capture.recording;

import static java.nio.charset.StandardCharsets.ISO_8859_1;
import static java.nio.charset.StandardCharsets.US_ASCII;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Refusals are one sentence that names the file, the line and the remedy. */
class BadRecordingTest {
  private static final String HEADER = "# recording: 1\n# started: 2026-05-02T09:14:07Z\n";

  @TempDir Path folder;

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "hello                                          | line 1 | not a recording",
        "''                                             | line 1 | not a recording",
        "# name: x~                                     | line 1 | lacks",
        "# recording: 2~                                | line 1 | version \"2\"",
        "# recording: 1~                                | line 1 | # started:",
        "# recording: 1~# started: yesterday~           | line 2 | 'yesterday'",
        "@# gate-spacing-mm: NaN~                       | line 3 | above 0",
        "@# gate-spacing-mm: 0~                         | line 3 | above 0",
        "@# gate-spacing-mm: -600~                      | line 3 | above 0",
        "@# gate-spacing-mm: 1e999~                     | line 3 | above 0",
        "@# gate-spacing-u-mm: -0.1~                    | line 3 | at least 0",
        "@# gates-from-bow-m: two~                      | line 3 | at least 0",
        "@# a note without its colon~                   | line 3 | # key: value",
        "@# name: x~# name: y~                          | line 4 | twice",
        "@# nam                                         | line 3 | cut off",
        "@12 $H~abc~                                    | line 4 | mend or delete",
        "@-5 $H~                                        | line 3 | mend or delete",
        "@99999999999999999999 $H~                      | line 3 | mend or delete",
        "@12~                                           | line 3 | mend or delete",
        "@12 a\\x4g~                                    | line 3 | mend or delete",
        "@12 a\\x4~                                     | line 3 | mend or delete",
        "@12 a~# name: late~                            | line 4 | mend or delete",
        "@12 a~11 b~                                    | line 4 | backwards",
        "@12 $H,1,2                                     | line 3 | cut off",
        "@12 123456789*29B1                             | line 3 | cut off",
        "@12 $123456789*29B2                            | line 3 | cut off",
        "@12 a~1                                        | line 4 | cut off",
      })
  void namesFileLineAndRemedy(String text, String where, String what) throws IOException {
    String sentence = refusal(write(text.strip())).getMessage();
    assertThat(sentence).contains("bad.rec, " + where + ":").contains(what.replace('\'', '"'));
    assertThat(sentence).endsWith(".").doesNotContain("Exception").doesNotContain("\n");
  }

  @ParameterizedTest
  @ValueSource(strings = {"@12 $123456789*29B1", "@12 $123456789*29B1~", "@", "@# note: x~12 ~"})
  void aWholeRecordingIsTakenWithOrWithoutItsLastNewline(String text) throws Exception {
    // 29B1 for 123456789: the catalogue of parametrised CRC algorithms
    try (Recording recording = Recording.open(write(text))) {
      assertThat(recording.header().name()).isEqualTo("bad");
    }
  }

  @Test
  void anEditorsLineEndsAndABareBackslashAreTaken() throws Exception {
    Path file = write("@12 a\\ b\\x5c\\x0D~".replace("~", "\r\n"));
    try (Recording recording = Recording.open(file)) {
      assertThat(recording.next()).contains(new RecordedLine(12, "a\\ b\\\r".getBytes(US_ASCII)));
    }
  }

  @Test
  void whatIsNoFileIsRefused() {
    assertThat(refusal(folder.resolve("gone.rec"))).hasMessageContaining("no such file");
    assertThat(refusal(folder)).hasMessageContaining("not a file");
  }

  @Test
  void aFileWithoutLinesIsRefused() throws IOException {
    Path file = Files.write(folder.resolve("noise"), new byte[200_000]);
    assertThat(refusal(file)).hasMessageContaining("noise, line 1").hasMessageContaining("doesn't");
  }

  private Path write(String text) throws IOException {
    String whole = text.replace("@", HEADER).replace('~', '\n');
    return Files.writeString(folder.resolve("bad.rec"), whole, ISO_8859_1);
  }

  private static BadRecording refusal(Path file) {
    return catchThrowableOfType(BadRecording.class, () -> Recording.open(file).close());
  }
}

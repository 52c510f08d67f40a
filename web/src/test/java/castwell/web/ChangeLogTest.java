package castwell.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.regex.Pattern;
import javax.xml.parsers.DocumentBuilderFactory;
import javax.xml.xpath.XPathFactory;
import org.junit.jupiter.api.Test;

/** The change log is in Debian's format, and begins with the version that is built. */
class ChangeLogTest {
  private static final Pattern ENTRY =
      Pattern.compile(
          """
          castwell \\((?<version>[0-9.]+)-[0-9]+\\) unstable; urgency=medium

          (?:  (?:\\* |  )\\S.*
          )+
           -- Castwell <castwell@localhost>  [A-Z][a-z]{2}, [0-9]{2} [A-Z][a-z]{2} [0-9]{4} [0-9:]{8} \\+0000
          """);

  private static String log() throws IOException {
    return Files.readString(Path.of("../.ci/packaging/changelog"));
  }

  @Test
  void everyEntryIsInDebiansFormat() throws IOException {
    assertThat(log().split("\n(?=castwell )")).allMatch(ENTRY.asMatchPredicate());
  }

  @Test
  void itBeginsWithTheProjectsVersion() throws Exception {
    String project =
        XPathFactory.newInstance()
            .newXPath()
            .evaluate(
                "/project/version",
                DocumentBuilderFactory.newInstance()
                    .newDocumentBuilder()
                    .parse(Path.of("../pom.xml").toFile()));
    assertThat(log()).startsWith("castwell (" + project + "-");
  }
}

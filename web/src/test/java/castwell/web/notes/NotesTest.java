package castwell.web.notes;

import static org.assertj.core.api.Assertions.assertThat;

import castwell.capture.wire.Fault;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import javax.xml.XMLConstants;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.Test;
import org.w3c.dom.Document;
import org.w3c.dom.NodeList;

/** The makers' notes hang together, and name what the program names. */
class NotesTest {
  private static final Path RULES =
      Path.of("..", "analysis", "src", "main", "java", "castwell", "analysis", "verdict");
  private static final Pattern LINK = Pattern.compile("\\]\\(([^)#]+)(#[^)]*)?\\)");
  private static final Pattern NAME = Pattern.compile("`([A-Z]+(?:_[A-Z]+)*)`");
  private static final Pattern CODE = Pattern.compile("\"([a-z]+(?:-[a-z]+)+)\"");

  @Test
  void everyLinkAndPictureExists() {
    for (Path file : Notes.files(".md")) {
      LINK.matcher(Notes.text(file))
          .results()
          .map(link -> link.group(1))
          .filter(target -> !target.startsWith("http"))
          .forEach(
              target -> assertThat(file.resolveSibling(target)).as("linked in %s", file).exists());
    }
  }

  @Test
  void theIndexLeadsToEveryNoteAndSomeNoteShowsEveryPicture() {
    String index = Notes.text("README.md");
    String all = Notes.files(".md").stream().map(Notes::text).collect(Collectors.joining());
    for (Path note : Notes.files(".md")) {
      String name = note.getFileName().toString();
      assertThat(name.equals("README.md") || index.contains("(" + name + ")")).as(name).isTrue();
    }
    for (Path picture : Notes.files(".svg")) {
      assertThat(all).contains("(pictures/" + picture.getFileName() + ")");
    }
  }

  // SVG 2, 5.7: a title and a description, the title being the first child.
  @Test
  void everyPictureIsWellFormedAndSaysWhatItShows() throws Exception {
    assertThat(Notes.files(".svg")).isNotEmpty();
    DocumentBuilderFactory parsers = DocumentBuilderFactory.newInstance();
    parsers.setFeature(XMLConstants.FEATURE_SECURE_PROCESSING, true);
    for (Path picture : Notes.files(".svg")) {
      Document svg = parsers.newDocumentBuilder().parse(Files.newInputStream(picture));
      for (String said : new String[] {"title", "desc"}) {
        NodeList elements = svg.getDocumentElement().getElementsByTagName(said);
        assertThat(elements.getLength()).as("%s of %s", said, picture).isEqualTo(1);
        assertThat(elements.item(0).getTextContent()).as("%s of %s", said, picture).isNotBlank();
      }
      assertThat(svg.getElementsByTagName("text").getLength()).isPositive();
      assertThat(svg.getElementsByTagName("image").getLength()).isZero();
    }
  }

  @Test
  void everyFaultOfTheCodeAndNoOtherIsInFaultFinding() {
    Set<String> faults = Arrays.stream(Fault.values()).map(Fault::name).collect(Collectors.toSet());
    assertThat(quoted("fault")).isEqualTo(faults);
    Set<String> named = matches(NAME, Notes.text("fault-finding.md"));
    assertThat(faults).containsAll(named);
  }

  @Test
  void everyVerdictOfTheCodeAndNoOtherIsInFaultFinding() throws Exception {
    try (Stream<Path> rules = Files.list(RULES)) {
      Set<String> codes = matches(CODE, rules.map(Notes::text).collect(Collectors.joining()));
      assertThat(codes).contains("one-gate");
      assertThat(quoted("verdict")).isEqualTo(codes);
    }
  }

  /** First cells of the table so headed, without their quotes. */
  private static Set<String> quoted(String heading) {
    return Notes.table("fault-finding.md", heading).keySet().stream()
        .map(cell -> cell.replace("`", ""))
        .collect(Collectors.toCollection(TreeSet::new));
  }

  private static Set<String> matches(Pattern pattern, String text) {
    return pattern
        .matcher(text)
        .results()
        .map(found -> found.group(1))
        .collect(Collectors.toCollection(TreeSet::new));
  }
}

package castwell.capture;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowable;

import castwell.analysis.wording.Phrase;
import castwell.analysis.wording.Telling;
import java.io.IOException;
import java.io.Reader;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Properties;
import org.assertj.core.api.ThrowableAssert.ThrowingCallable;

/** Phrases in the words that people read; nothing of the program's needs them here. */
public final class English {
  private static final Path TEXTS =
      Path.of("../web/src/main/resources/castwell/web/text/en.properties");
  private static final Properties ENGLISH = read();

  private English() {}

  private static Properties read() {
    Properties texts = new Properties();
    try (Reader reader = Files.newBufferedReader(TEXTS)) {
      texts.load(reader);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return texts;
  }

  /** Why something isn't done, in words. */
  public static String refusal(ThrowingCallable work) {
    Throwable thrown = catchThrowable(work);
    assertThat(thrown).isInstanceOf(Telling.class);
    return say(((Telling) thrown).phrase());
  }

  public static String say(Phrase phrase) {
    String text = ENGLISH.getProperty(phrase.key());
    if (text == null) {
      throw new AssertionError("there is no text " + phrase.key());
    }
    for (int i = 0; i < phrase.values().size(); i++) {
      Object value = phrase.values().get(i);
      String said = value instanceof Phrase inner ? say(inner) : String.valueOf(value);
      text =
          text.replace("{" + i + "}", said)
              .replaceAll("\\{" + i + "\\|([^|}]*)\\|([^|}]*)}", said.equals("1") ? "$1" : "$2");
    }
    return text;
  }
}

package castwell.capture.publish;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import castwell.capture.daemon.Refused;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class TagWishTest {

  private static TagWish read(String payload) {
    return TagWish.of(payload.getBytes(UTF_8));
  }

  @Test
  void namesAndNullForWhatIsNotKnown() {
    assertThat(read("{\"bow\": \"H\u00e9ron\", \"arrow\": null}"))
        .isEqualTo(new TagWish(Optional.of("H\u00e9ron"), Optional.empty()));
    assertThat(read(" {\"arrow\": \"heavy\", \"bow\": null}\n"))
        .isEqualTo(new TagWish(Optional.empty(), Optional.of("heavy")));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '`',
      value = {
        "`` | these two fields",
        "null | these two fields",
        "{} | these two fields",
        "[\"heron\"] | these two fields",
        "{\"bow\": \"heron\"} | these two fields",
        "{\"bow\": null, \"arrow\": null, \"by\": 1} | these two fields",
        "{\"bow\": 7, \"arrow\": null} | text in quotes, or null",
        "{\"bow\": null, \"arrow\": {}} | text in quotes, or null",
        "{\"bow\": \"heron\", \"bow\": null, \"arrow\": null} | isn't JSON",
        "{\"bow\": null, \"arrow\": null} {} | isn't JSON",
        "heron | isn't JSON",
      })
  void anythingElseIsRefusedInOneSentence(String payload, String why) {
    assertThatThrownBy(() -> read(payload))
        .isInstanceOf(Refused.class)
        .hasMessageStartingWith("What was sent to tags/set can't be read (")
        .hasMessageContaining(why);
  }
}

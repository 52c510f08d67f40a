package castwell.capture.view.broker;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import castwell.capture.command.Refused;
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
        "`` | refused.tag_wish_fields",
        "null | refused.tag_wish_fields",
        "{} | refused.tag_wish_fields",
        "[\"heron\"] | refused.tag_wish_fields",
        "{\"bow\": \"heron\"} | refused.tag_wish_fields",
        "{\"bow\": null, \"arrow\": null, \"by\": 1} | refused.tag_wish_fields",
        "{\"bow\": 7, \"arrow\": null} | refused.tag_wish_name",
        "{\"bow\": null, \"arrow\": {}} | refused.tag_wish_name",
        "{\"bow\": \"heron\", \"bow\": null, \"arrow\": null} | refused.tag_wish_no_json",
        "{\"bow\": null, \"arrow\": null} {} | refused.tag_wish_no_json",
        "heron | refused.tag_wish_no_json",
      })
  void anythingElseIsRefusedInOneSentence(String payload, String why) {
    assertThatThrownBy(() -> read(payload))
        .isInstanceOf(Refused.class)
        .hasMessageStartingWith("refused.tag_wish|")
        .hasMessageContaining(why);
  }
}

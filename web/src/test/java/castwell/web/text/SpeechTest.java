package castwell.web.text;

import static org.assertj.core.api.Assertions.assertThat;

import castwell.analysis.shot.Gate;
import castwell.analysis.wording.Amount;
import castwell.analysis.wording.Phrase;
import org.junit.jupiter.api.Test;

class SpeechTest {

  @Test
  void durationsAreToldInMilliseconds() {
    Amount lasting = Amount.duration(0.0030004);
    Amount before = Amount.duration(0.25);

    assertThat(Speech.TRADE.say(Phrase.of("verdict.beside_before", Gate.A, lasting, before)))
        .isEqualTo("Beside the arrow, gate A saw something for 3 ms, 250 ms before its front.");
    assertThat(Speech.TRADE.say(Phrase.of("verdict.flood", Gate.B, 64, before)))
        .isEqualTo("Gate B saw 64 edges in 250 ms, too many to tell apart.");
  }

  @Test
  void bothStoriesAreOneSentence() {
    Amount one = Amount.speed(45.72);
    Amount other = Amount.speed(60.96);

    assertThat(Speech.TRADE.say(Phrase.of("verdict.two_stories_arrow", one, other)))
        .isEqualTo("Two readings fit nearly alike: an arrow at 150 ft/s, or an arrow at 200 ft/s.");
  }
}

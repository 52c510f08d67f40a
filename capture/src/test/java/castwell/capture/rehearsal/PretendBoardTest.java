package castwell.capture.rehearsal;

import static org.assertj.core.api.Assertions.assertThat;

import castwell.capture.rehearsal.Listening.Heard;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** What a board owes its host: the contract of the wire, version 1. */
class PretendBoardTest {
  private static final long SEED = 20260502;

  private static Listening clean() {
    return new Listening(
        new RehearsalSettings(SEED, "rehearsal-1", 7, 7, 20, 0.006, 0), Optional.empty());
  }

  @Test
  void saysWhoItIsAtStartAndEveryMinuteAndWhenAsked() {
    Listening board = clean().forSeconds(150);
    assertThat(board.of('I')).hasSize(3);
    String[] fields = board.of('I').get(0).fields();
    assertThat(fields)
        .containsExactly(
            "I",
            fields[1],
            "1",
            "rehearsal",
            "rehearsal-1",
            "7",
            "2000000",
            "2",
            "0",
            "0",
            "64",
            "P");
    board.say("?");
    assertThat(board.forSeconds(0.1).of('I')).hasSize(4);
  }

  @Test
  void numbersEveryLineAndWraps() {
    Listening board = clean().forSeconds(60);
    for (int i = 0; i < 1500; i++) {
      board.say("R,6,1\n".repeat(50));
      board.forSeconds(0.5);
    }
    List<Heard> all = board.all();
    assertThat(all.size()).isGreaterThan(1 << 16);
    for (int i = 1; i < all.size(); i++) {
      assertThat(all.get(i).number(1)).isEqualTo(all.get(i - 1).number(1) + 1 & 0xFFFF);
    }
    assertThat(board.bad()).isZero();
  }

  @Test
  void beatsAboutEverySecondDitheredByUpTo16Millis() {
    List<Heard> beats = clean().forSeconds(120).of('H');
    double ticksPerSecond = 2e6;
    for (int i = 1; i < beats.size(); i++) {
      double seconds = (beats.get(i).number(3) - beats.get(i - 1).number(3)) / ticksPerSecond;
      // 0.5 %: the most that the contract allows a resonator
      assertThat(seconds).isBetween(1 / 1.005, 1.016 * 1.005);
      assertThat(beats.get(i).number(4)).isBetween(0L, 4000L);
      assertThat(beats.get(i).fields()).hasSize(15);
      assertThat(beats.get(i).fields()[8]).matches("[BC]{2}");
      assertThat(beats.get(i).number(9)).isBetween(0L, 1023L);
    }
    assertThat(beats.get(beats.size() - 1).number(5)).isPositive();
  }

  @Test
  void sendsAgainWhatItKeepsAndNamesWhatItNoLongerDoes() {
    Listening board = clean().forSeconds(300);
    long highest = board.of('E').stream().mapToLong(h -> h.number(3)).max().orElseThrow();
    assertThat(highest).isGreaterThan(64);
    board.forget();
    board.say("R,7,1");
    board.forSeconds(0.5);
    Heard missing = board.of('M').get(0);
    assertThat(List.of(missing.number(3), missing.number(4))).containsExactly(1L, highest - 64);
    assertThat(board.of('E').stream().map(h -> h.number(3)))
        .containsExactlyElementsOf(
            IntStream.rangeClosed((int) highest - 63, (int) highest)
                .mapToObj(i -> (long) i)
                .toList());
  }

  @Test
  void sendsOnlyFromTheEdgeAskedFor() {
    Listening board = clean().forSeconds(40);
    long highest = board.of('E').stream().mapToLong(h -> h.number(3)).max().orElseThrow();
    List<String> first = board.of('E').stream().map(PretendBoardTest::withoutLine).toList();
    board.forget();
    board.say("R,7," + (highest - 1));
    board.forSeconds(0.5);
    assertThat(board.of('M')).isEmpty();
    assertThat(board.of('E').stream().map(PretendBoardTest::withoutLine))
        .isEqualTo(first.subList(first.size() - 2, first.size()));
    board.forget();
    board.say("R,7," + (highest + 1));
    assertThat(board.forSeconds(0.5).of('E')).isEmpty();
    assertThat(board.of('M')).isEmpty();
  }

  private static String withoutLine(Heard edge) {
    return String.join(",", List.of(edge.fields()).subList(2, 7));
  }

  @Test
  void answersForAnotherBootWithItsIdentityAlone() {
    Listening board = clean().forSeconds(40);
    board.forget();
    board.say("R,6,1");
    board.forSeconds(0.1);
    assertThat(board.of('I')).hasSize(1);
    assertThat(board.of('E')).isEmpty();
  }

  @Test
  void whatItDoesNotKnowItPassesOver() {
    Listening board = clean().forSeconds(40);
    board.forget();
    board.say("R,7\nR,7,99999999999\nR,a,b\n\u00FF\0hello" + "x".repeat(5000) + "\n?");
    assertThat(board.forSeconds(0.1).of('I')).hasSize(1);
  }

  @Test
  void ticksRunAtASteadyRateWithinAResonatorsTolerance() {
    List<Heard> beats = clean().forSeconds(600).of('H');
    Heard first = beats.get(0);
    Heard last = beats.get(beats.size() - 1);
    double rate = (last.number(3) - first.number(3)) / (last.micros() - first.micros()) * 1e6;
    assertThat(rate).isBetween(2e6 * 0.995, 2e6 * 1.005).isNotEqualTo(2e6);
  }
}

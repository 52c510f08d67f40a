package castwell.capture.wire;

import static org.assertj.core.api.Assertions.assertThat;

import castwell.capture.wire.Sentence.Missing;
import java.util.Arrays;
import org.junit.jupiter.api.Test;

/**
 * Whatever comes before it, however long or wild: counted by kind, and the next sentence is read.
 */
class NoiseTest {
  private static final String GOOD = Lines.line("M,1,7,1,2");
  private static final String NEXT = Lines.line("M,2,7,3,4");

  /** The bytes and, after them, two good sentences that must come through. */
  private static void countsAs(Fault fault, long times, String noise) {
    Heard heard = new Heard().hear(noise + GOOD + NEXT);
    assertThat(heard.sentences).containsExactly(new Missing(1, 7, 1, 2), new Missing(2, 7, 3, 4));
    assertThat(heard.faults.all()).containsOnlyKeys(fault).containsEntry(fault, times);
  }

  @Test
  void garbageBetweenLines() {
    countsAs(Fault.GARBAGE, 1, "hello world\r\n");
    countsAs(Fault.GARBAGE, 1, "no line end before the next sentence");
    countsAs(Fault.GARBAGE, 3, "three\nlines\nof it\n");
  }

  @Test
  void eightBitNoise() {
    countsAs(Fault.GARBAGE, 1, "\u00ff\u0000\u0080\u001b\u007f");
    countsAs(Fault.GARBAGE, 1, "$E,1,7,1,A\u00fe,B,5,0*0000\r\n");
    countsAs(Fault.GARBAGE, 1, "$E,1,7\u0000\u0000\u0000,1,A,B,5,0*0000");
  }

  @Test
  void halfLines() {
    countsAs(Fault.TRUNCATED, 1, "$E,1,7,1\r\n");
    countsAs(Fault.TRUNCATED, 1, "$E,1,7,1,A,B,5,0*12\r\n");
    countsAs(Fault.TRUNCATED, 1, "$\n");
    countsAs(Fault.TRUNCATED, 1, "$*FFFF\n");
    countsAs(Fault.GARBAGE, 1, "1,A,B,5,0*1234\r\n");
  }

  @Test
  void aDollarInsideNoise() {
    countsAs(Fault.TRUNCATED, 3, "$$$");
    countsAs(Fault.TRUNCATED, 1, "$no sentence ");
  }

  @Test
  void aWrongCrc() {
    countsAs(Fault.BAD_CRC, 1, "$E,1,7,1,A,B,5,0*0000\r\n");
    String lowerCase = "$Q,0*" + "%04x".formatted(Lines.crc("Q,0")) + "\r\n";
    assertThat(lowerCase).isEqualTo("$Q,0*d0ba\r\n"); // else it has no letter to be wrong in
    countsAs(Fault.BAD_CRC, 1, lowerCase);
  }

  @Test
  void anEndlessLine() {
    char[] endless = new char[100_000];
    Arrays.fill(endless, 'x');
    countsAs(Fault.TOO_LONG, 1, "$" + new String(endless));
    countsAs(Fault.GARBAGE, 1, new String(endless));
    countsAs(Fault.TOO_LONG, 1, "$" + new String(endless) + "\n");
  }

  @Test
  void theLongestLineThatTheProtocolAllowsIsRead() {
    String fields = "M,1,7,1,2,";
    String padding = "x".repeat(120 - 2 - 6 - fields.length());
    String longest = Lines.line(fields + padding);
    assertThat(longest).hasSize(120);
    assertThat(new Heard().hear(longest).sentences).containsExactly(new Missing(1, 7, 1, 2));
  }

  @Test
  void aLineThatLostItsEnd() {
    String lost = Lines.whole("M,0,7,9,9");
    Heard heard = new Heard().hear(lost + GOOD);
    assertThat(heard.sentences).containsExactly(new Missing(0, 7, 9, 9), new Missing(1, 7, 1, 2));
    assertThat(heard.faults.all()).isEmpty();
  }

  @Test
  void twoSentencesGluedTogether() {
    String cut = "$E,0,7,1,A,B,";
    countsAs(Fault.TRUNCATED, 1, cut);
    countsAs(Fault.BAD_CRC, 1, cut + "5,0*0000");
  }

  @Test
  void eitherLineEndWillDo() {
    for (String end : new String[] {"\r\n", "\n", "\r", "\n\n", "\r\r\n"}) {
      Heard heard = new Heard().hear(Lines.whole("M,1,7,1,2") + end + NEXT);
      assertThat(heard.sentences).hasSize(2);
      assertThat(heard.faults.all()).isEmpty();
    }
  }

  @Test
  void bytesThatComeOneByOne() {
    Heard heard = new Heard();
    for (byte b : Lines.bytes(GOOD + "noise\n" + NEXT)) {
      heard.hear(new byte[] {b});
    }
    assertThat(heard.sentences).hasSize(2);
    assertThat(heard.faults.of(Fault.GARBAGE)).isEqualTo(1);
  }

  @Test
  void aHalfLineFromBeforeAReconnectIsDropped() {
    Heard heard = new Heard().hear("$M,1,7,").reconnect().hear("1,2*1234\r\n" + NEXT);
    assertThat(heard.sentences).containsExactly(new Missing(2, 7, 3, 4));
    assertThat(heard.faults.of(Fault.TRUNCATED)).isEqualTo(1);
    assertThat(heard.faults.of(Fault.GARBAGE)).isEqualTo(1);
  }
}

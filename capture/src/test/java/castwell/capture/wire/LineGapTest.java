package castwell.capture.wire;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

/** Line numbers tell what was lost on the way. */
class LineGapTest {

  private static String lines(int... numbers) {
    StringBuilder text = new StringBuilder();
    for (int number : numbers) {
      text.append(Lines.line("M,%d,7,1,2".formatted(number)));
    }
    return text.toString();
  }

  private static long gaps(Heard heard) {
    return heard.faults.of(Fault.LINE_GAP);
  }

  @Test
  void aLineLostOnTheWayIsOneGap() {
    assertThat(gaps(new Heard().hear(lines(5, 6, 8, 9)))).isEqualTo(1);
    assertThat(gaps(new Heard().hear(lines(5, 6, 300, 301)))).isEqualTo(1);
  }

  @Test
  void theNumbersWrap() {
    assertThat(gaps(new Heard().hear(lines(65534, 65535, 0, 1)))).isZero();
    assertThat(gaps(new Heard().hear(lines(65534, 0)))).isEqualTo(1);
  }

  @Test
  void theFirstLineHeardIsNoGap() {
    assertThat(gaps(new Heard().hear(lines(4711)))).isZero();
  }

  @Test
  void aReconnectStartsOver() {
    assertThat(gaps(new Heard().hear(lines(5, 6)).reconnect().hear(lines(90, 91)))).isZero();
  }

  @Test
  void aBoardThatStartsCountsFromZero() {
    String start = Lines.line("I,0,1,f,d,8,2000000,2,0,0,64,P");
    assertThat(gaps(new Heard().hear(lines(5, 6) + start + lines(1)))).isZero();
  }

  @Test
  void unknownAndBadSentencesHaveLineNumbersToo() {
    String unknown = Lines.line("Q,6,1");
    String bad = Lines.line("M,7,7,5,4");
    assertThat(gaps(new Heard().hear(lines(5) + unknown + bad + lines(8)))).isZero();
  }

  @Test
  void aLineWithAWrongCrcIsAGap() {
    Heard heard = new Heard().hear(lines(5) + "$M,6,7,1,2*0000\r\n" + lines(7));
    assertThat(gaps(heard)).isEqualTo(1);
    assertThat(heard.faults.of(Fault.BAD_CRC)).isEqualTo(1);
  }
}

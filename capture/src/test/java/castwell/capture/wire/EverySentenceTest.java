package castwell.capture.wire;

import static org.assertj.core.api.Assertions.assertThat;

import castwell.analysis.shot.EdgeKind;
import castwell.analysis.shot.Gate;
import castwell.capture.wire.Sentence.EdgeSeen;
import castwell.capture.wire.Sentence.Heartbeat;
import castwell.capture.wire.Sentence.Identity;
import castwell.capture.wire.Sentence.Key;
import castwell.capture.wire.Sentence.Levels;
import castwell.capture.wire.Sentence.Loss;
import castwell.capture.wire.Sentence.Missing;
import castwell.capture.wire.Sentence.Press;
import castwell.capture.wire.Sentence.Surroundings;
import java.util.Optional;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Each sentence of the wire protocol, version 1, means what the protocol says. */
class EverySentenceTest {

  private static Sentence read(String body) {
    Heard heard = new Heard().hear(Lines.line(body));
    assertThat(heard.faults.all()).isEmpty();
    assertThat(heard.sentences).hasSize(1);
    return heard.sentences.get(0);
  }

  private static void isBad(String body) {
    Heard heard = new Heard().hear(Lines.line(body) + Lines.line("M,0,7,1,2"));
    assertThat(heard.faults.of(Fault.BAD_FIELD)).as(body).isEqualTo(1);
    assertThat(heard.sentences).as(body).containsExactly(new Missing(0, 7, 1, 2));
  }

  @Test
  void identity() {
    assertThat(read("I,35257,1,sim-1.0,gate_1,7,2000000,2,-150,2400,64,P"))
        .isEqualTo(new Identity(35257, 1, "sim-1.0", "gate_1", 7, 2_000_000, -150, 2400, 64, 'P'));
  }

  @ParameterizedTest
  @ValueSource(chars = {'P', 'E', 'B', 'W', 'U'})
  void everyCauseOfAStart(char cause) {
    assertThat(((Identity) read("I,0,1,f,d,0,2000000,2,0,0,64," + cause)).cause()).isEqualTo(cause);
  }

  @ParameterizedTest
  @CsvSource({"A,B", "A,C", "A,G", "B,B", "B,C", "B,G"})
  void edgeOfEitherGateAndAnyKind(String gate, String kind) {
    assertThat(read("E,65535,65535,2147483647,%s,%s,4294967295,20".formatted(gate, kind)))
        .isEqualTo(
            new EdgeSeen(
                65535,
                65535,
                Integer.MAX_VALUE,
                Gate.valueOf(gate),
                EdgeKind.ofLetter(kind.charAt(0)),
                4_294_967_295L,
                20));
  }

  @Test
  void heartbeat() {
    String body = "H,9,7,281474976710655,37,4,1,2,BC,812,0,5012,-2150,1875,10000";
    assertThat(read(body))
        .isEqualTo(
            new Heartbeat(
                9,
                7,
                281_474_976_710_655L,
                37,
                4,
                1,
                2,
                Optional.of(new Levels(true, false)),
                new Surroundings(
                    OptionalInt.of(812),
                    OptionalInt.of(0),
                    OptionalInt.of(5012),
                    OptionalInt.of(-2150),
                    OptionalInt.of(1875),
                    OptionalInt.of(10_000)),
                Lines.line(body).length()));
  }

  @ParameterizedTest
  @CsvSource({"CC,false,false", "BC,true,false", "CB,false,true", "BB,true,true"})
  void levelsOfBothPins(String letters, boolean blockedA, boolean blockedB) {
    Heartbeat beat = (Heartbeat) read("H,0,0,0,0,0,0,0,%s,,,,,,".formatted(letters));
    assertThat(beat.levels()).contains(new Levels(blockedA, blockedB));
  }

  @Test
  void heartbeatThatWaitedBehindALongQueue() {
    assertThat(((Heartbeat) read("H,9,7,1000,110708,4,0,0,CC,,,,,,")).queued()).isEqualTo(110_708);
  }

  @Test
  void loss() {
    assertThat(read("L,3,7,B,100,4294967295,44"))
        .isEqualTo(new Loss(3, 7, Gate.B, 100, 4_294_967_295L, 44));
  }

  @Test
  void missing() {
    assertThat(read("M,3,7,1,64")).isEqualTo(new Missing(3, 7, 1, 64));
  }

  @Test
  void key() {
    assertThat(read("K,3,7,1,S,5")).isEqualTo(new Key(3, 7, 1, Press.SHORT, 5));
    assertThat(read("K,3,7,9,L,5")).isEqualTo(new Key(3, 7, 9, Press.LONG, 5));
  }

  @Test
  void emptyFieldsAreNotKnown() {
    Heartbeat beat = (Heartbeat) read("H,9,7,100,,4,,,,,,,,,");
    assertThat(beat.queued()).isZero();
    assertThat(beat.levels()).isEmpty();
    OptionalInt notKnown = OptionalInt.empty();
    assertThat(beat.surroundings())
        .isEqualTo(new Surroundings(notKnown, notKnown, notKnown, notKnown, notKnown, notKnown));
    assertThat(read("I,0,1,f,d,0,2000000,,,,,"))
        .isEqualTo(new Identity(0, 1, "f", "d", 0, 2_000_000, 0, 0, 0, 'U'));
    assertThat(((EdgeSeen) read("E,0,7,1,A,B,5,")).late()).isZero();
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "I,0,1,f,d,0,2000000,2,0,0,64,P",
        "E,0,7,1,A,B,5,0",
        "L,0,7,A,1,2,3",
        "M,0,7,1,2",
        "K,0,7,1,S,5"
      })
  void furtherFieldsAreIgnored(String body) {
    assertThat(read(body + ",new,,-7,*?")).isEqualTo(read(body));
  }

  @Test
  void furtherFieldsOfAHeartbeatOnlyLengthenItsLine() {
    Heartbeat plain = (Heartbeat) read("H,0,7,100,0,4,0,0,CC,1,2,3,4,5,6");
    Heartbeat longer = (Heartbeat) read("H,0,7,100,0,4,0,0,CC,1,2,3,4,5,6,77");
    assertThat(longer.bytes()).isEqualTo(plain.bytes() + 3);
    assertThat(longer.surroundings()).isEqualTo(plain.surroundings());
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "E,65535,7,0,A,B,5,0", // edges count from 1
        "E,65535,7,1,C,B,5,0",
        "E,65535,7,1,A,X,5,0",
        "E,65535,7,1,A,B,4294967296,0",
        "E,65535,7,1,A,B,5,-1",
        "E,65535,7,1,A,B,,0",
        "E,65535,7,1,A,B",
        "E,65535,65536,1,A,B,5,0",
        "E,65535,7,1,AB,B,5,0",
        "E,65535,7,0x1,A,B,5,0",
        "E,65535,7,1,A,B,99999999999999999999999,0",
        "H,65535,7,281474976710656,0,4,0,0,CC,1,2,3,4,5,6",
        "H,65535,7,100,0,4,0,0,CD,1,2,3,4,5,6",
        "H,65535,7,100,0,4,0,0,CC,1024,2,3,4,5,6",
        "H,65535,7,100,0,4,0,0,CC,1,2,3,4,5,10001",
        "I,65535,1,f,a name with blanks,0,2000000,2,0,0,64,P",
        "I,65535,1,f,seventeen-letters,0,2000000,2,0,0,64,P",
        "I,65535,1,f,,0,2000000,2,0,0,64,P",
        "I,65535,1,f,d,0,0,2,0,0,64,P",
        "I,65535,1,f,d,0,2000000,2,0,0,64,PE",
        "L,65535,7,A,1,2",
        "M,65535,7,5,4",
        "K,65535,7,0,S,5",
        "K,65535,7,10,S,5",
        "K,65535,7,1,X,5",
        "E,65535,"
      })
  void aBadFieldWithARightCrcIsCountedAndTheNextLineIsRead(String body) {
    isBad(body);
  }

  @ParameterizedTest
  @ValueSource(strings = {"E", "E,", "E,65536,7,1,A,B,5,0", "E,-1,7,1,A,B,5,0", ",1,2"})
  void aBadLineNumberIsCountedAndTheNextLineIsRead(String body) {
    isBad(body);
  }

  @ParameterizedTest
  @ValueSource(strings = {"Q,65535,1,2,3", "e,65535,7,1,A,B,5,0", "EE,65535,7,1,A,B,5,0"})
  void anUnknownTypeIsCountedAndIgnored(String body) {
    Heard heard = new Heard().hear(Lines.line(body) + Lines.line("M,0,7,1,2"));
    assertThat(heard.faults.all()).containsOnlyKeys(Fault.UNKNOWN_SENTENCE);
    assertThat(heard.faults.of(Fault.UNKNOWN_SENTENCE)).isEqualTo(1);
    assertThat(heard.sentences).containsExactly(new Missing(0, 7, 1, 2));
  }
}

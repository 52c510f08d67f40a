package castwell.capture.intake;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;

import castwell.capture.English;
import castwell.capture.FuzzInputs;
import castwell.capture.intake.sheet.SheetKind;
import castwell.capture.intake.sheet.SheetRefused;
import java.nio.file.Path;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Any text is refused in sentences, or taken in, and then once only. {@code .ci/fuzz 60 sheet}
 * looks for more inputs.
 */
public class SheetFuzzTest {
  private static final IntakeBench BENCH = new IntakeBench(FuzzInputs.folder()).withRack();

  /** Ends a transaction with nothing of it left. */
  private static final class Undone extends RuntimeException {
    private static final long serialVersionUID = 1L;
  }

  static Stream<Path> inputs() {
    return FuzzInputs.of("sheet");
  }

  @ParameterizedTest
  @MethodSource("inputs")
  void isRefusedOrTakenInOnce(Path input) {
    fuzzerTestOneInput(FuzzInputs.read(input));
  }

  /** The fuzzer's way in: the first byte chooses the sheet. */
  public static void fuzzerTestOneInput(byte[] input) {
    if (input.length == 0) {
      return;
    }
    SheetKind what = SheetKind.values()[input[0] & 3];
    String text = new String(input, 1, input.length - 1, UTF_8);
    try {
      BENCH
          .store()
          .writing(
              t -> {
                takeTwice(what, text);
                throw new Undone();
              });
    } catch (Undone e) {
      // So that the next finds the store as this one did.
    } catch (SheetRefused e) {
      assertThat(English.say(e.phrase())).endsWith(".");
      assertThat(e.lines())
          .allSatisfy(line -> assertThat(English.say(line.reason())).endsWith("."));
    }
  }

  private static void takeTwice(SheetKind what, String text) {
    Taken first = BENCH.take(what, text);
    Taken again = BENCH.take(what, text);
    assertThat(again.taken()).isZero();
    assertThat(again.already()).isEqualTo(first.taken() + first.already());
  }
}

package castwell.capture.assembly;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

@Tag("slow")
class LongRunTest {

  @Test
  void memoryStaysBoundedOver100000Passages() {
    PretendGates gates = new PretendGates();
    Host host = new Host();
    for (int i = 0; i < 100_000; i++) {
      List<Stamp> arrow = gates.arrow(2 * i + 1);
      if (i % 50 == 0) {
        arrow = arrow.subList(1, 4);
      }
      host.beat(2 * i, 4 * i).hear(arrow);
    }
    host.until(200_001);
    assertThat(host.given()).hasSize(100_000);
    long remembered =
        IntStream.rangeClosed(1, gates.count())
            .filter(number -> host.assembler.known(number).isPresent())
            .count();
    assertThat(remembered).isBetween(256L, 1100L);
    assertThat(host.assembler.known(gates.count())).isPresent();
  }
}

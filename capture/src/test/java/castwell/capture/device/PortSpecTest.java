package castwell.capture.device;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Our own notation, no outside source. */
class PortSpecTest {

  @Test
  void readsEachNotation() {
    assertThat(PortSpec.parse("auto")).isEqualTo(new PortSpec.Anywhere());
    assertThat(PortSpec.parse("mqtt")).isEqualTo(new PortSpec.OverMqtt());
    assertThat(PortSpec.parse("/dev/ttyACM0")).isEqualTo(new PortSpec.ByPath("/dev/ttyACM0"));
    assertThat(PortSpec.parse("usb:2341:00aF"))
        .isEqualTo(new PortSpec.ByUsb(0x2341, 0xAF, Optional.empty()));
    assertThat(PortSpec.parse("usb:2341:0043:A:1"))
        .isEqualTo(new PortSpec.ByUsb(0x2341, 0x43, Optional.of("A:1")));
  }

  @ParameterizedTest
  @ValueSource(strings = {"auto", "mqtt", "/dev/ttyACM0", "usb:2341:00af", "usb:2341:0043:A1"})
  void isWrittenAsItIsRead(String text) {
    assertThat(PortSpec.parse(text)).hasToString(text);
  }

  @ParameterizedTest
  @ValueSource(strings = {"", " ", "usb:", "usb:2341", "usb:234:0043", "usb:2341:0043:", "a\nb"})
  void refusesAnythingElseWithOneSentence(String text) {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> PortSpec.parse(text))
        .withMessageContaining("names no port; give auto,")
        .withMessageNotContaining("\n");
  }
}

package castwell.web.access;

import static org.assertj.core.api.Assertions.assertThat;

import castwell.web.settings.HttpAddress;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class OriginTest {
  @ParameterizedTest
  @ValueSource(
      strings = {"localhost", "LOCALHOST:8017", "127.0.0.1:8017", "127.1.2.3", "[::1]:8017"})
  void theseNamesAreThisComputersAlone(String host) {
    assertThat(Origin.isLoopbackHost(host)).isTrue();
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "evil.example:8017",
        "localhost.evil.example",
        "127.0.0.1.evil.example",
        "evil.example@127.0.0.1",
        "192.168.1.7:8017",
        "0.0.0.0:8017",
        "localhost:8017:8017",
        "local\u212Aost", // a Kelvin sign is a k in lower case
        "",
        "::1"
      })
  void theseAreNot(String host) {
    assertThat(Origin.isLoopbackHost(host)).isFalse();
  }

  @ParameterizedTest
  @CsvSource({
    "http://range.example:8017, range.example:8017, true",
    "https://range.example, range.example:443, true",
    "http://Range.Example, range.example, true",
    "http://range.example:8017, range.example:8018, false",
    "http://evil.example, range.example, false",
    "http://range.example.evil.example, range.example, false",
    "null, range.example, false",
    "range.example, range.example, false"
  })
  void aPageIsItsOwnHosts(String origin, String host, boolean own) {
    assertThat(Origin.isOf(origin, host)).isEqualTo(own);
  }

  @Test
  void aHouseholdsAddressesShareTheirLimit() {
    assertThat(Origin.neighbourhood("[2001:db8:1:2:3:4:5:6]"))
        .isEqualTo(Origin.neighbourhood("2001:db8:1:2::9"))
        .isNotEqualTo(Origin.neighbourhood("2001:db8:1:3::9"));
    assertThat(Origin.neighbourhood("192.0.2.1")).isEqualTo("192.0.2.1");
    assertThat(Origin.neighbourhood("no address")).isEqualTo("no address");
  }

  /** RFC 5735: all of 127.0.0.0/8. */
  @ParameterizedTest
  @CsvSource({
    "8017, true",
    "localhost:8017, true",
    "127.0.0.2:8017, true",
    "[::1]:8017, true",
    "0.0.0.0:8017, false",
    "[::]:8017, false",
    "192.168.1.7:8017, false",
    "range.local:8017, false"
  })
  void onlyALoopbackAddressIsForThisComputerAlone(String address, boolean loopback) {
    assertThat(HttpAddress.parse(address).isLoopback()).isEqualTo(loopback);
  }

  @Test
  void aLinkNamesAnAddressThatOthersCanReach() {
    assertThat(ReachableAddress.of("0.0.0.0")).doesNotStartWith("0.");
    assertThat(ReachableAddress.of("range.local")).isEqualTo("range.local");
  }
}

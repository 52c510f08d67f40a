package castwell.web.settings;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import castwell.analysis.setup.ObliquePath;
import castwell.analysis.setup.SetUpErrors;
import castwell.analysis.setup.UnparallelPlanes;
import castwell.analysis.setup.WarmRails;
import castwell.analysis.speed.Calibration;
import castwell.capture.publish.broker.BrokerSettings;
import castwell.capture.publish.broker.Secret;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class SettingsFileTest {
  @TempDir Path folder;

  @Test
  void theFileWrittenAtTheFirstStartSaysTheDefaults() throws Exception {
    Settings first = SettingsFile.read(folder.resolve("data"));
    String written = Files.readString(folder.resolve("data/castwell.toml"));
    assertThat(first).isEqualTo(SettingsFile.parse("nothing.toml", ""));
    // Written out, so that a change of a key's name or place in the file would show.
    assertThat(SettingsFile.parse("written.toml", written)).isEqualTo(first);
    assertThat(first.listen()).isEqualTo(new HttpAddress("127.0.0.1", 8017));
    assertThat(first.stations()).extracting(Settings.Station::name).containsExactly("range");
    assertThat(SettingsFile.read(folder.resolve("data"))).isEqualTo(first);
  }

  @Test
  void whatIsSetHolds() {
    Settings settings =
        SettingsFile.parse(
            "set.toml",
            """
            [http]
            listen = "[::1]:9000"
            watch = "open"
            reached_at = "https://range.example"
            certificate = "range.pem"
            certificate_key = "/etc/range/key.pem"
            [gates]
            spacing_mm = 700
            [passage]
            slowest_mps = 30
            [[station]]
            name = "left"
            [[station]]
            name = "right"
            port = "/dev/ttyACM1"
            spacing_mm = 500
            oscillator = "crystal"
            """);
    assertThat(settings.listen()).hasToString("[::1]:9000");
    assertThat(settings.http().watchOpen()).isTrue();
    assertThat(settings.http().reachedAt()).hasValue("https://range.example/");
    assertThat(settings.http().needsKey(settings.listen())).isTrue();
    assertThat(settings.http().certificate().orElseThrow().certificate())
        .isEqualTo(Path.of("range.pem"));
    assertThat(settings.http().certificate().orElseThrow().key())
        .hasValue(Path.of("/etc/range/key.pem"));
    assertThat(settings.capture().limits().slowestMps()).isEqualTo(30);
    assertThat(settings.stations())
        .extracting(station -> station.gates().spacingM())
        .containsExactly(0.7, 0.5);
    assertThat(settings.stations().get(1).port()).hasToString("/dev/ttyACM1");
  }

  /** Whoever writes another spacing measured it; who measured just that says so. */
  @Test
  void aSpacingIsMeasuredWhenItIsSaid() {
    assertThat(gates("")).matches(gates -> !gates.isMeasured() && gates.spacingUM() == 0.0038);
    assertThat(gates("spacing_mm = 612.4"))
        .matches(gates -> gates.isMeasured() && gates.spacingUM() == 0.0003);
    assertThat(gates("spacing_u_mm = 0.5"))
        .matches(gates -> gates.isMeasured() && gates.spacingUM() == 0.0005);
    assertThat(gates("spacing_measured = true"))
        .matches(gates -> gates.isMeasured() && gates.spacingUM() == 0.0003);
    assertThat(gates("spacing_mm = 612.4\nspacing_measured = false"))
        .matches(gates -> !gates.isMeasured() && gates.spacingUM() == 0.0038);
  }

  @Test
  void whatNoEdgeTellsIsSetOneByOne() {
    SetUpErrors usual = SetUpErrors.USUAL;
    assertThat(gates("").errors()).isEqualTo(usual);
    assertThat(
            gates(
                    """
                    path_degrees = 1
                    out_of_parallel_mm = 2
                    off_measured_mm = 50
                    rails_ppm_per_k = 5
                    rails_k = 10
                    latency_unlike_us = 1
                    drag_percent_per_m = 1""")
                .errors())
        .isEqualTo(
            new SetUpErrors(
                new ObliquePath(1),
                new UnparallelPlanes(0.002, 0.05),
                new WarmRails(5e-6, 10),
                1e-6,
                0.01));
    assertThat(gates("rails_k = 5").errors().path()).isEqualTo(usual.path());
  }

  private static Calibration gates(String keys) {
    return SettingsFile.parse("set.toml", "[gates]\n" + keys).capture().gates();
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "[gates] @ path_degrees = 16 | [gates] path_degrees",
        "[gates] @ spacing_measured = \"yes\" | true or false",
        "[http | line 1",
        "a = 1 @ a = 2 | line 2",
        "a = 1 @ a = 2 @ b = 3 @ c = 4 | line 2",
        "a = 1 @ b = @ c = 4 | line 2",
        "http = 3 | [http]",
        "[gates] @ spacing_m = 0.6 | nearest is \"spacing_mm\"",
        "[gate] @ spacing_mm = 600 | nearest is \"gates\"",
        "[[station]] @ potr = \"auto\" | nearest is \"port\"",
        "[gates] @ spacing_mm = -1 | [gates] spacing_mm",
        "[gates] @ spacing_mm = nan | [gates] spacing_mm",
        "[gates] @ spacing_mm = \"wide\" | [gates] spacing_mm",
        "[gates] @ oscillator = \"quartz\" | \"crystal\" or \"resonator\"",
        "[passage] @ slowest_mps = 150 | below fastest_mps",
        "[passage] @ shortest_mm = 1500 | below longest_mm",
        "[http] @ listen = \"nowhere\" | HOST:PORT",
        "[http] @ listen = 8017 | text in quotes",
        "[http] @ watch = \"all\" | \"open\" to all",
        "[http] @ reached_at = \"range.example\" | https://range.example/",
        "[http] @ reached_at = \"https://range.example/a?b\" | https://range.example/",
        "[http] @ certificate_key = \"key.pem\" | without its certificate",
        "[http] @ readers = 0 | [http] readers",
        "[http] @ slow_request_s = -1 | [http] slow_request_s",
        "[mqtt] @ urk = \"mqtt://broker\" | nearest is \"url\"",
        "[mqtt] @ url = 1883 | text in quotes",
        "[[station]] @ port = \"usb:1\" | usb:",
        "[[station]] @ name = \"a b\" | station's name",
        "[[station]] @ name = \"a\" @ [[station]] @ name = \"a\" | rename one",
        "station = 1 | [[station]]",
        "station = [1] | station",
      })
  void whatCantBeIsRefusedByPlaceInOneSentence(String settings, String told) {
    assertThatThrownBy(() -> SettingsFile.parse("bad.toml", settings.replace(" @ ", "\n") + "\n"))
        .isInstanceOf(BadSettings.class)
        .hasMessageContaining(told)
        .message()
        .matches("bad\\.toml, [^\\n]{10,300}[^.]\\.");
  }

  @Test
  void aBrokerIsAsTheFileSaysUnlessTheEnvironmentSaysOtherwise() {
    String file =
        """
        [mqtt]
        url = "mqtt://written"
        user = "castwell"
        password = "written"
        """;
    Map<String, String> environment =
        Map.of("CASTWELL_MQTT_URL", "mqtts://set:8884", "CASTWELL_MQTT_PASSWORD", "set");
    BrokerSettings written = SettingsFile.parse("a.toml", file).broker().orElseThrow();
    BrokerSettings set = SettingsFile.parse("a.toml", file, environment).broker().orElseThrow();
    assertThat(written.url()).isEqualTo("mqtt://written");
    assertThat(set.url()).isEqualTo("mqtts://set:8884");
    assertThat(set.user()).contains("castwell");
    assertThat(set.password()).contains(new Secret("set"));
    assertThat(SettingsFile.parse("a.toml", "", environment).broker()).isPresent();
    assertThat(SettingsFile.parse("a.toml", "[mqtt]\nuser = \"castwell\"").broker()).isEmpty();
  }

  @Test
  void aPasswordIsInNoText() {
    Settings settings =
        SettingsFile.parse(
            "a.toml", "[mqtt]\nurl = \"mqtt://b\"\nuser = \"castwell\"\npassword = \"hush\"");
    assertThat(settings.toString()).contains("castwell").doesNotContain("hush");
  }

  @Test
  void whatIsNoTextIsRefused() throws Exception {
    Files.write(folder.resolve("castwell.toml"), new byte[] {(byte) 0xFF, (byte) 0xFE, 0});
    assertThatThrownBy(() -> SettingsFile.read(folder))
        .isInstanceOf(BadSettings.class)
        .hasMessageContaining("UTF-8");
  }

  @ParameterizedTest
  @CsvSource({
    "8017, 127.0.0.1, 8017",
    "0, 127.0.0.1, 0",
    "0.0.0.0:80, 0.0.0.0, 80",
    "range.local:65535, range.local, 65535",
    "[::1]:80, ::1, 80",
  })
  void anAddressIsAHostAndAPort(String text, String host, int port) {
    assertThat(HttpAddress.parse(text)).isEqualTo(new HttpAddress(host, port));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "",
        "nonsense",
        "65536",
        "-1",
        ":80",
        "host:",
        "host:x",
        "[]:80",
        "a:b:80",
        "a b:1"
      })
  void whatIsNoAddressIsRefused(String text) {
    assertThatThrownBy(() -> HttpAddress.parse(text))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("\"" + text + "\"");
  }
}

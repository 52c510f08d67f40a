package castwell.web.access;

import static org.assertj.core.api.Assertions.assertThat;

import io.nayuki.qrcodegen.QrCode;
import java.security.SecureRandom;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;

class AccessKeyTest {
  @Test
  void aKeyIsOfAHundredAndFortyBitsInSignsThatNobodyMixesUp() {
    SecureRandom random = new SecureRandom();
    Set<String> keys = new HashSet<>();
    Set<Integer> signs = new HashSet<>();
    for (int i = 0; i < 1000; i++) {
      String key = AccessKey.fresh(random);
      assertThat(key).matches("([0-9A-HJKMNP-TV-Z]{4}-){6}[0-9A-HJKMNP-TV-Z]{4}");
      keys.add(key);
      key.replace("-", "").chars().forEach(signs::add);
    }
    assertThat(keys).hasSize(1000);
    assertThat(signs).hasSize(32); // five bits a sign
  }

  /** Crockford's base 32, as its author decodes it. */
  @Test
  void whatIsTypedIsTakenAsItWasMeant() {
    assertThat(AccessKey.meant(" abcd-efgh oiLl ")).isEqualTo("ABCDEFGH0111");
  }

  /** FIPS 180-4's own example. */
  @Test
  void whatIsKeptIsItsSha256() {
    assertThat(Secrets.hash("abc"))
        .isEqualTo("ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad");
    assertThat(Secrets.same(Secrets.hash("abc"), Secrets.hash("abc"))).isTrue();
    assertThat(Secrets.same(Secrets.hash("abc"), Secrets.hash("abd"))).isFalse();
  }

  /** ISO/IEC 18004: every module as it is, and four light ones around. */
  @Test
  void halfBlocksShowEveryModuleAndTheMargin() {
    QrCode code = QrCode.encodeText("http://192.0.2.7:8017/enter#A", QrCode.Ecc.LOW);
    List<String> drawn =
        Invitation.halfBlocks(code)
            .lines()
            .map(line -> line.replaceAll("\u001b\\[[0-9;]*m", ""))
            .toList();
    assertThat(drawn).hasSize((code.size + 8 + 1) / 2);
    for (int y = -4; y < code.size + 4; y++) {
      for (int x = -4; x < code.size + 4; x++) {
        char block = drawn.get((y + 4) / 2).charAt(x + 4);
        boolean dark = block == '█' || block == ((y + 4) % 2 == 0 ? '▀' : '▄');
        assertThat(dark).as("%d, %d", x, y).isEqualTo(code.getModule(x, y));
      }
    }
  }
}

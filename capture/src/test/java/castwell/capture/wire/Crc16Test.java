package castwell.capture.wire;

import static java.nio.charset.StandardCharsets.US_ASCII;
import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

class Crc16Test {

  @Test
  void givesTheCataloguesCheckValue() {
    // Catalogue of parametrised CRC algorithms, CRC-16/IBM-3740: check 29B1, residue 0000
    assertThat(Crc16.of("123456789".getBytes(US_ASCII), 0, 9)).isEqualTo(0x29B1);
    byte[] withItsCrc = {'1', '2', '3', '4', '5', '6', '7', '8', '9', 0x29, (byte) 0xB1};
    assertThat(Crc16.of(withItsCrc, 0, withItsCrc.length)).isZero();
  }

  @Test
  void countsOnlyTheBytesAskedFor() {
    assertThat(Crc16.of("$123456789*".getBytes(US_ASCII), 1, 10)).isEqualTo(0x29B1);
  }

  @Test
  void startsFromAllOnes() {
    // Same catalogue: initial value FFFF
    assertThat(Crc16.of(new byte[0], 0, 0)).isEqualTo(0xFFFF);
  }
}

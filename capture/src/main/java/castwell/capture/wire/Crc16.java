package castwell.capture.wire;

/**
 * The check sum of a sentence: CRC-16/CCITT-FALSE, also called CRC-16/IBM-3740 (polynomial 1021,
 * initial FFFF, no reflection, no final xor).
 *
 * <p>Source: the catalogue of parametrised CRC algorithms.
 */
public final class Crc16 {
  private static final int POLYNOMIAL = 0x1021;
  private static final int[] TABLE = table();

  private Crc16() {}

  /**
   * @param from the index of the first byte that counts
   * @param to the index after the last byte that counts
   * @return the check sum, 0 to FFFF
   */
  public static int of(byte[] bytes, int from, int to) {
    int crc = 0xFFFF;
    for (int i = from; i < to; i++) {
      crc = (crc << 8 & 0xFFFF) ^ TABLE[(crc >> 8 ^ bytes[i]) & 0xFF];
    }
    return crc;
  }

  private static int[] table() {
    int[] table = new int[256];
    for (int i = 0; i < table.length; i++) {
      int crc = i << 8;
      for (int bit = 0; bit < 8; bit++) {
        crc = (crc & 0x8000) == 0 ? crc << 1 : crc << 1 ^ POLYNOMIAL;
      }
      table[i] = crc & 0xFFFF;
    }
    return table;
  }
}

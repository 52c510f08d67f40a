package castwell.analysis.shot;

/** What a gate's comparator did when the stamp was taken. */
public enum EdgeKind {
  /** The beam became blocked. */
  BLOCKED('B'),
  /** The beam became clear. */
  CLEAR('C'),
  /** Two edges fell together and got one stamp, so neither can be told. */
  MERGED('G');

  private final char letter;

  EdgeKind(char letter) {
    this.letter = letter;
  }

  /** The letter that stands for this kind on the wire and in the store. */
  public char letter() {
    return letter;
  }

  /**
   * @throws IllegalArgumentException when no kind has that letter
   */
  public static EdgeKind ofLetter(char letter) {
    for (EdgeKind kind : values()) {
      if (kind.letter == letter) {
        return kind;
      }
    }
    throw new IllegalArgumentException("no edge kind has the letter " + letter);
  }
}

package castwell.analysis.speed;

/** An end of the object that goes through the gates. */
enum End {
  FRONT("front"),
  TAIL("tail");

  private final String word;

  End(String word) {
    this.word = word;
  }

  String word() {
    return word;
  }
}

package castwell.web;

import castwell.web.cli.Castwell;

/** Where the program starts. */
public final class Main {
  private Main() {}

  public static void main(String[] args) {
    int code = Castwell.run(args);
    if (code != 0) {
      System.exit(code);
    }
  }
}

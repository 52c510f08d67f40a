package castwell.web;

/** The program's entry: everything is wired here. */
public final class Main {
  private Main() {}

  public static void main(String[] args) {
    System.out.println("castwell");
  }
}

package castwell.web.workbench;

public final class RackPage {
  public record View(String answer) {}
}

package castwell.web.workbench;

/** The page that says why another one can't be shown. */
public final class TroublePage {

  public record View(String sentence) {}

  private TroublePage() {}

  public static Page of(PageRequest request, String sentence) {
    return new Page(MenuEntry.RACK, "trouble", request.say("trouble.title"), new View(sentence));
  }
}

package castwell.web.workbench;

/** Says why a page can't be shown. */
public final class TroublePage {

  public record View(String sentence) {}

  private TroublePage() {}

  public static Page of(PageRequest asked, String sentence) {
    return new Page(MenuEntry.RACK, "trouble", asked.say("trouble.title"), new View(sentence));
  }
}

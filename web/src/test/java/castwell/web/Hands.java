package castwell.web;

import com.microsoft.playwright.Keyboard;
import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import java.util.Map;

/** How somebody works on the pages: by tapping, or by keys alone. */
interface Hands {
  /** A button, a link or a fold. */
  void press(Locator thing);

  void fill(Locator field, String text);

  void tick(Locator box);

  void choose(Locator list, String option);

  static Hands tapping() {
    return new Hands() {
      @Override
      public void press(Locator thing) {
        thing.page().waitForLoadState(); // forms are sent by script
        thing.click();
      }

      @Override
      public void fill(Locator field, String text) {
        field.fill(text);
      }

      @Override
      public void tick(Locator box) {
        box.check();
      }

      @Override
      public void choose(Locator list, String option) {
        list.selectOption(option);
      }
    };
  }

  static Hands onKeys(Page page) {
    return new Keys(page);
  }

  /** Tab leads to everything, and it is seen where it stands. */
  record Keys(Page page) implements Hands {
    private static final int MOST = 400;
    private static final String IS_SEEN =
        """
        (thing) => {
          if (thing !== document.activeElement) return '';
          const seen = [thing, ...(thing.labels ?? [])].map((one) => getComputedStyle(one));
          const box = thing.getBoundingClientRect();
          const isInside = box.bottom > 0 && box.top < innerHeight;
          const isMarked = seen.some((style) => style.outlineStyle !== 'none' && style.outlineWidth !== '0px');
          return isInside && isMarked ? 'seen' : `not seen: ${thing.outerHTML.slice(0, 200)}`;
        }""";

    private void tabTo(Locator thing) {
      thing.waitFor();
      for (int i = 0; i < MOST; i++) {
        String seen = (String) thing.evaluate(IS_SEEN);
        if (seen.equals("seen")) {
          return;
        }
        if (!seen.isEmpty()) {
          throw new AssertionError(seen);
        }
        keys().press("Tab");
      }
      throw new AssertionError("Tab doesn't lead to " + thing.evaluate("e => e.outerHTML"));
    }

    private Keyboard keys() {
      return page.keyboard();
    }

    @Override
    public void press(Locator thing) {
      page.waitForLoadState();
      tabTo(thing);
      keys().press("Enter");
    }

    @Override
    public void fill(Locator field, String text) {
      tabTo(field);
      keys().press("Control+a");
      keys().type(text);
    }

    @Override
    public void tick(Locator box) {
      tabTo(box);
      keys().press("Space");
    }

    /** By its first letters, as a list takes them. */
    @Override
    public void choose(Locator list, String option) {
      tabTo(list);
      keys().type(option);
      Object chosen = list.evaluate("list => list.selectedOptions[0].textContent");
      if (!option.equals(chosen)) {
        throw new AssertionError(Map.of("wanted", option, "chosen", chosen).toString());
      }
    }
  }
}

package castwell.web.workbench;

import castwell.web.text.Texts;
import gg.jte.ContentType;
import gg.jte.TemplateEngine;
import gg.jte.output.StringOutput;
import java.util.Map;

/** Fills pages into their templates, which the build has compiled. */
public final class Printing {
  private final TemplateEngine templates =
      TemplateEngine.createPrecompiled(null, ContentType.Html, null, "castwell.web.jte");

  /** The page as HTML. */
  public String html(Page page, Frame frame) {
    StringOutput html = new StringOutput();
    templates.render(page.template() + ".jte", Map.of("view", page.view(), "frame", frame), html);
    return html.toString();
  }

  /** A page that holds only words, and that scripts fill in. */
  public String html(String template, Texts texts) {
    StringOutput html = new StringOutput();
    templates.render(template + ".jte", Map.of("texts", texts), html);
    return html.toString();
  }
}

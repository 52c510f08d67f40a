package castwell.web.workbench;

import gg.jte.ContentType;
import gg.jte.TemplateEngine;
import gg.jte.output.StringOutput;
import java.util.Map;

/** Puts pages into their templates, which the build has compiled. */
public final class Printing {
  private final TemplateEngine templates =
      TemplateEngine.createPrecompiled(null, ContentType.Html, null, "castwell.web.jte");

  /** The page as HTML. */
  public String html(Page page, Frame frame) {
    StringOutput html = new StringOutput();
    Map<String, Object> parts = Map.of("view", page.view(), "frame", frame);
    templates.render(page.template() + ".jte", parts, html);
    return html.toString();
  }
}

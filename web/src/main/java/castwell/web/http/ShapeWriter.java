package castwell.web.http;

import castwell.capture.view.Json;
import io.javalin.json.JsonMapper;
import java.lang.reflect.Type;

/** Has answers written as every shape is. */
final class ShapeWriter implements JsonMapper {
  @Override
  public String toJsonString(Object shape, Type type) {
    return Json.text(shape);
  }
}

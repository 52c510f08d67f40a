package castwell.web.report;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;

/** Names and values in the order put; a null is kept, as "can't tell". */
final class Fields {
  private final Map<String, Object> map = new LinkedHashMap<>();

  Fields put(String name, Object value) {
    map.put(name, value);
    return this;
  }

  Fields putAll(Map<String, Object> values) {
    map.putAll(values);
    return this;
  }

  Map<String, Object> map() {
    return Collections.unmodifiableMap(map);
  }
}

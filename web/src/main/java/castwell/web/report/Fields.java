package castwell.web.report;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;

/** Names and values in the order put; a null is kept, as "can't tell". */
public final class Fields {
  private final Map<String, Object> map = new LinkedHashMap<>();

  public Fields put(String name, Object value) {
    map.put(name, value);
    return this;
  }

  public Fields putAll(Map<String, Object> values) {
    map.putAll(values);
    return this;
  }

  public Map<String, Object> map() {
    return Collections.unmodifiableMap(map);
  }
}

package castwell.capture.view;

import castwell.capture.measure.Measure;
import castwell.capture.measure.Measures;
import java.lang.reflect.ParameterizedType;
import java.lang.reflect.Type;
import java.util.List;

/** The measures that {@link Measures} of one kind of thing may hold: each is a field of its own. */
public final class Catalogue {
  private Catalogue() {}

  /**
   * @param measures the type of a component that holds measures
   */
  public static List<Measure> of(Type measures) {
    Type entries = ((ParameterizedType) measures).getActualTypeArguments()[0];
    return of((Class<?>) entries);
  }

  public static List<Measure> of(Class<?> entries) {
    return List.of((Measure[]) entries.getEnumConstants());
  }
}

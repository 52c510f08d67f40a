package castwell.capture.view;

import java.lang.annotation.ElementType;
import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import java.lang.annotation.Target;

/** What a component of a shape means, for its schema and for the table in which it is a column. */
@Retention(RetentionPolicy.RUNTIME)
@Target({ElementType.RECORD_COMPONENT, ElementType.FIELD})
public @interface Meaning {
  String value();

  /** The unit in plain words, empty where there is none. */
  String unit() default "";
}

package castwell.capture.view.schema;

import com.github.victools.jsonschema.generator.SchemaBuilder;

/** The shapes of one document, each described once and referred to wherever it is used. */
public final class Shapes {
  private final SchemaBuilder builder = SchemaMaker.many();

  public Schema one(Class<?> shape) {
    return new Schema(builder.createSchemaReference(shape));
  }

  /**
   * All shapes that were referred to so far, by name. From then on the references can be followed.
   *
   * @param where the place in the document at which they stand
   */
  public Schema told(String where) {
    return new Schema(builder.collectDefinitions(where));
  }
}

package castwell.capture.view.schema;

import com.github.victools.jsonschema.generator.SchemaBuilder;

/** The shapes of one document: told once each, and referred to wherever they stand. */
public final class Shapes {
  private final SchemaBuilder builder = SchemaMaker.many();

  public Schema one(Class<?> shape) {
    return new Schema(builder.createSchemaReference(shape));
  }

  /**
   * All that was referred to so far, by name; the references are whole from then on.
   *
   * @param where they stand in the document
   */
  public Schema told(String where) {
    return new Schema(builder.collectDefinitions(where));
  }
}

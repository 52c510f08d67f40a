package castwell.capture.view.schema;

import castwell.capture.measure.Measure;
import castwell.capture.measure.Measures;
import castwell.capture.view.AtLeast;
import castwell.capture.view.Catalogue;
import castwell.capture.view.Components;
import castwell.capture.view.Interval95;
import castwell.capture.view.Json;
import castwell.capture.view.Meaning;
import castwell.capture.view.Words;
import com.fasterxml.classmate.ResolvedType;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.github.victools.jsonschema.generator.CustomDefinition;
import com.github.victools.jsonschema.generator.Option;
import com.github.victools.jsonschema.generator.OptionPreset;
import com.github.victools.jsonschema.generator.SchemaBuilder;
import com.github.victools.jsonschema.generator.SchemaGenerationContext;
import com.github.victools.jsonschema.generator.SchemaGenerator;
import com.github.victools.jsonschema.generator.SchemaGeneratorConfigBuilder;
import com.github.victools.jsonschema.generator.SchemaVersion;
import com.github.victools.jsonschema.generator.TypeScope;
import java.lang.reflect.Field;
import java.math.BigDecimal;
import java.time.Instant;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.OptionalLong;

/** Makes JSON Schemas (2020-12) of shapes, from the records that are written and read. */
public final class SchemaMaker {
  private static final String STATION = "^[A-Za-z0-9._-]{1,32}$";
  private static final Map<Class<?>, String> NUMBERS =
      Map.of(
          OptionalDouble.class,
          "number",
          OptionalInt.class,
          "integer",
          OptionalLong.class,
          "integer");

  private SchemaMaker() {}

  /** The document of a single shape, as text. */
  public static String document(Class<?> shape, String title, String description) {
    SchemaGeneratorConfigBuilder config = config();
    config
        .forTypesInGeneral()
        .withTitleResolver(type -> isOf(shape, type) ? title : null)
        .withDescriptionResolver(type -> isOf(shape, type) ? description : null);
    return new SchemaGenerator(config.build()).generateSchema(shape).toPrettyString();
  }

  private static boolean isOf(Class<?> shape, TypeScope scope) {
    return scope.getType() != null && scope.getType().getErasedType() == shape;
  }

  /**
   * A builder for a document of many shapes: each is described once, and referred to from
   * elsewhere.
   */
  static SchemaBuilder many() {
    return new SchemaGenerator(config().build()).buildMultipleSchemaDefinitions();
  }

  private static SchemaGeneratorConfigBuilder config() {
    SchemaGeneratorConfigBuilder config =
        new SchemaGeneratorConfigBuilder(
                Json.MAPPER, SchemaVersion.DRAFT_2020_12, OptionPreset.PLAIN_JSON)
            .with(
                Option.FLATTENED_OPTIONALS,
                Option.INLINE_NULLABLE_SCHEMAS,
                Option.FORBIDDEN_ADDITIONAL_PROPERTIES_BY_DEFAULT,
                Option.DEFINITIONS_FOR_ALL_OBJECTS);
    config
        .forFields()
        .withPropertyNameOverrideResolver(field -> Components.name(field.getRawMember()))
        .withRequiredCheck(field -> isAlwaysThere(field.getRawMember()))
        .withDescriptionResolver(field -> description(field.getRawMember()))
        .withStringPatternResolver(
            field -> field.getDeclaredName().equals("station") ? STATION : null)
        .withNumberInclusiveMinimumResolver(field -> least(field.getRawMember()));
    config
        .forTypesInGeneral()
        .withPropertySorter((one, other) -> 0)
        .withSubtypeResolver(SchemaMaker::permitted)
        .withCustomDefinitionProvider(SchemaMaker::words)
        .withCustomDefinitionProvider(SchemaMaker::simple)
        .withCustomDefinitionProvider(SchemaMaker::measures)
        .withCustomDefinitionProvider(new UnwrappedParts());
    return config;
  }

  private static boolean isAlwaysThere(Field field) {
    return Components.isAlwaysThere(field, Components.isRequest(field.getDeclaringClass()));
  }

  private static String description(Field field) {
    Meaning meaning = field.getAnnotation(Meaning.class);
    return meaning == null
        ? null
        : meaning.value() + (meaning.unit().isEmpty() ? "" : " (" + meaning.unit() + ")");
  }

  private static BigDecimal least(Field field) {
    AtLeast least = field.getAnnotation(AtLeast.class);
    return least == null ? null : BigDecimal.valueOf(least.value());
  }

  /** The shapes that a sealed shape may have; null for one that isn't sealed. */
  private static List<ResolvedType> permitted(ResolvedType type, SchemaGenerationContext context) {
    Class<?> shape = type.getErasedType();
    return shape.isSealed()
        ? Arrays.stream(shape.getPermittedSubclasses())
            .map(one -> context.getTypeContext().resolve(one))
            .toList()
        : null;
  }

  private static CustomDefinition words(ResolvedType type, SchemaGenerationContext context) {
    if (!type.getErasedType().isEnum()) {
      return null;
    }
    ObjectNode schema = context.getGeneratorConfig().createObjectNode().put("type", "string");
    ArrayNode words = schema.putArray("enum");
    Words.all(type.getErasedType()).forEach(words::add);
    return new CustomDefinition(schema);
  }

  /** Measures are fields of their own in the shape that holds them. */
  private static CustomDefinition measures(ResolvedType type, SchemaGenerationContext context) {
    if (type.getErasedType() != Measures.class) {
      return null;
    }
    ObjectNode schema = context.getGeneratorConfig().createObjectNode().put("type", "object");
    ObjectNode properties = schema.putObject("properties");
    ArrayNode required = schema.putArray("required");
    for (Measure measure : Catalogue.of(type.getTypeParameters().get(0).getErasedType())) {
      ObjectNode field = properties.putObject(measure.field());
      String told = measure.entry().told();
      Optional<String> unit = measure.number().map(number -> number.scale().unit());
      field.putArray("type").add(unit.isPresent() ? "number" : "string").add("null");
      field.put("description", told + unit.map(name -> " (" + name + ")").orElse(""));
      required.add(measure.field());
    }
    return new CustomDefinition(schema, true);
  }

  /**
   * The schema of a type that isn't a shape of its own: a number, a moment, an interval or a map;
   * null for others.
   */
  private static CustomDefinition simple(ResolvedType type, SchemaGenerationContext context) {
    Class<?> of = type.getErasedType();
    ObjectNode schema = context.getGeneratorConfig().createObjectNode();
    if (NUMBERS.containsKey(of)) {
      schema.putArray("type").add(NUMBERS.get(of)).add("null");
    } else if (of == Instant.class) {
      schema.put("type", "string").put("format", "date-time");
    } else if (of == Interval95.class) {
      schema.put("type", "array").put("minItems", 2).put("maxItems", 2);
      schema.putObject("items").putArray("type").add("number").add("null");
    } else if (of == Map.class) {
      schema.put("type", "object");
      schema.set(
          "additionalProperties",
          context.createDefinitionReference(type.getTypeParameters().get(1)));
    } else {
      return null;
    }
    return new CustomDefinition(schema, true);
  }
}

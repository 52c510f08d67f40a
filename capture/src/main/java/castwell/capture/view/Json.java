package castwell.capture.view;

import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.DeserializationContext;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.PropertyNamingStrategies;
import com.fasterxml.jackson.databind.SerializerProvider;
import com.fasterxml.jackson.databind.deser.std.FromStringDeserializer;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.module.SimpleModule;
import com.fasterxml.jackson.databind.ser.std.StdSerializer;
import com.fasterxml.jackson.databind.ser.std.ToStringSerializer;
import com.fasterxml.jackson.datatype.jdk8.Jdk8Module;
import java.io.IOException;
import java.time.Instant;

/**
 * Writes and reads shapes as JSON. Components come in their order, with names in small letters with
 * underscores; an empty one is null, "not known". A moment is text by RFC 3339, and a constant is
 * its word.
 */
public final class Json {
  public static final JsonMapper MAPPER =
      JsonMapper.builder()
          .propertyNamingStrategy(PropertyNamingStrategies.SNAKE_CASE)
          .disable(DeserializationFeature.FAIL_ON_UNKNOWN_PROPERTIES)
          .addModule(new Jdk8Module())
          .addModule(
              new SimpleModule()
                  .addSerializer(new WordSerializer())
                  .addSerializer(new MeasuresSerializer())
                  .addSerializer(Instant.class, ToStringSerializer.instance)
                  .addDeserializer(Instant.class, new InstantDeserializer()))
          .build();

  private Json() {}

  public static String text(Object shape) {
    try {
      return MAPPER.writeValueAsString(shape);
    } catch (JsonProcessingException e) {
      throw new IllegalStateException(e);
    }
  }

  /** The same JSON over several lines, for people. */
  public static String indented(Object shape) {
    try {
      return MAPPER.writerWithDefaultPrettyPrinter().writeValueAsString(shape);
    } catch (JsonProcessingException e) {
      throw new IllegalStateException(e);
    }
  }

  /**
   * Reads what another Castwell wrote, which may be a later one that tells more.
   *
   * @throws IOException when it isn't of that shape
   */
  public static <S> S read(String json, Class<S> shape) throws IOException {
    return MAPPER.readValue(json, shape);
  }

  private static final class WordSerializer extends StdSerializer<Enum<?>> {
    private static final long serialVersionUID = 1;

    WordSerializer() {
      super(Enum.class, false);
    }

    @Override
    public void serialize(Enum<?> constant, JsonGenerator json, SerializerProvider provider)
        throws IOException {
      json.writeString(Words.of(constant));
    }
  }

  private static final class InstantDeserializer extends FromStringDeserializer<Instant> {
    private static final long serialVersionUID = 1;

    InstantDeserializer() {
      super(Instant.class);
    }

    @Override
    protected Instant _deserialize(String text, DeserializationContext context) {
      return Instant.parse(text);
    }
  }
}

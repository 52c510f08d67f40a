package castwell.web.cli;

import java.util.Arrays;
import java.util.stream.Collectors;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/**
 * Converts an option's value that is one of a few words, which are the constants' {@code toString}.
 */
abstract class OneOf<E extends Enum<E>> implements ITypeConverter<E> {
  private final E[] values;

  OneOf(Class<E> type) {
    this.values = type.getEnumConstants();
  }

  @Override
  public E convert(String word) {
    return Arrays.stream(values)
        .filter(value -> value.toString().equalsIgnoreCase(word))
        .findFirst()
        .orElseThrow(
            () ->
                new TypeConversionException(
                    "\"%s\" is none of %s"
                        .formatted(
                            word,
                            Arrays.stream(values)
                                .map(Enum::toString)
                                .collect(Collectors.joining(", ")))));
  }
}

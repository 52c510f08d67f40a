package castwell.capture.measure;

import java.util.Collections;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.function.Function;

/**
 * The known measures of a bow's state or of an arrow.
 *
 * @param numbers in SI units
 */
public record Measures<M extends Enum<M> & Measure>(
    SortedMap<M, Double> numbers, SortedMap<M, String> words) {

  public Measures {
    numbers = Collections.unmodifiableSortedMap(new TreeMap<>(numbers));
    words = Collections.unmodifiableSortedMap(new TreeMap<>(words));
  }

  public static <M extends Enum<M> & Measure> Measures<M> none() {
    return new Measures<M>(new TreeMap<M, Double>(), new TreeMap<M, String>());
  }

  /**
   * @param catalogue every measure that there is
   * @param number gives the value of a measure that is a number, in SI units
   * @param words gives the value of a measure in words
   */
  public static <M extends Enum<M> & Measure> Measures<M> of(
      M[] catalogue, Function<M, OptionalDouble> number, Function<M, Optional<String>> words) {
    SortedMap<M, Double> numbers = new TreeMap<>();
    SortedMap<M, String> told = new TreeMap<>();
    for (M measure : catalogue) {
      if (measure.number().isPresent()) {
        number.apply(measure).ifPresent(si -> numbers.put(measure, si));
      } else {
        words.apply(measure).ifPresent(text -> told.put(measure, text));
      }
    }
    return new Measures<>(numbers, told);
  }

  /** The value of a measure in SI units. */
  public OptionalDouble number(M measure) {
    Double si = numbers.get(measure);
    return si == null ? OptionalDouble.empty() : OptionalDouble.of(si);
  }

  public Optional<String> words(M measure) {
    return Optional.ofNullable(words.get(measure));
  }

  /** The same measures, with this number added or replaced. */
  public Measures<M> with(M measure, double si) {
    SortedMap<M, Double> more = new TreeMap<>(numbers);
    more.put(measure, si);
    return new Measures<>(more, words);
  }

  /**
   * The same measures, with how they were taken. That is known only together with the measure
   * itself: as somebody said, or else as is usual.
   *
   * @param catalogue every measure that there is
   */
  public Measures<M> completed(M[] catalogue) {
    SortedMap<M, Double> whole = new TreeMap<>(numbers);
    for (M measure : catalogue) {
      measure
          .usual()
          .ifPresent(
              usual -> {
                if (numbers.containsKey(usual.with())) {
                  whole.putIfAbsent(measure, usual.si());
                } else {
                  whole.remove(measure);
                }
              });
    }
    return new Measures<>(whole, words);
  }
}

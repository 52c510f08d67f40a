package castwell.web.http.guard;

import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.concurrent.atomic.AtomicLong;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.slf4j.LoggerFactory;

/** What was refused, counted since the start: kinds alone, nothing of what was sent. */
public final class Refusals {
  /** Why somebody was turned away. */
  public enum Kind {
    NO_KEY,
    WRONG_KEY,
    TOO_MANY_TRIES,
    OTHER_HOST,
    OTHER_SITE,
    TOO_LARGE,
    TOO_MANY_READERS,
    TOO_MANY_CONNECTIONS,
    TOO_SLOW,
    BAD_REQUEST;

    public String word() {
      return name().toLowerCase(Locale.ROOT);
    }
  }

  private final Map<Kind, AtomicLong> counts =
      Stream.of(Kind.values()).collect(Collectors.toMap(kind -> kind, kind -> new AtomicLong()));

  /** Logged at the first, the tenth, the hundredth ...: an outsider can't fill the log. */
  public void count(Kind kind) {
    long n = counts.get(kind).incrementAndGet();
    if (isPowerOfTen(n)) {
      LoggerFactory.getLogger(Refusals.class).warn("refused: {} ({} so far)", kind.word(), n);
    }
  }

  private static boolean isPowerOfTen(long n) {
    long left = n;
    while (left % 10 == 0) {
      left /= 10;
    }
    return left == 1;
  }

  public long of(Kind kind) {
    return counts.get(kind).get();
  }

  /** Every kind by its word, those that never happened too. */
  public Map<String, Long> all() {
    Map<String, Long> all = new TreeMap<>();
    counts.forEach((kind, count) -> all.put(kind.word(), count.get()));
    return all;
  }
}

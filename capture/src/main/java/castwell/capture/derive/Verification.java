package castwell.capture.derive;

import castwell.analysis.verdict.Judge;
import castwell.capture.settings.CaptureSettings;
import castwell.capture.store.Calibrations;
import castwell.capture.store.Figure;
import castwell.capture.store.Passages;
import castwell.capture.store.ProgressListener;
import castwell.capture.store.Store;
import castwell.capture.store.Tags;
import castwell.capture.store.Transaction;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/**
 * Verifies that every derived figure still follows from the raw facts, with the tick rate and the
 * air that it was derived with.
 */
public final class Verification {
  /** The relative difference that is allowed, since sums in another order round otherwise. */
  private static final double ROUNDING = 1e-11;

  /**
   * The same of uncertainties, which hold shares that change a little with the speed itself and
   * aren't carried along when figures follow the tick rate.
   */
  private static final double NEARLY = 1e-6;

  /** Which of the numbers are uncertainties. */
  private static final Set<Integer> UNCERTAINTIES = Set.of(1, 2, 4, 6, 8);

  private static final int MOST_TOLD = 20;

  private final Derivation derivation;

  /**
   * What a verification found.
   *
   * @param passages how many passages were looked at
   * @param figures how many figures were derived anew and compared
   * @param byOlderRules how many of these were judged by older rules, so that they may differ
   * @param faults what is wrong, a sentence each, for the first few faults
   * @param faultCount how many faults there are in all
   */
  public record Outcome(
      long passages, long figures, long byOlderRules, List<String> faults, long faultCount) {}

  public Verification(CaptureSettings settings) {
    this.derivation = new Derivation(settings);
  }

  /** Verifies the database itself, and where that is whole also the figures in it. */
  public Outcome verify(Store store, ProgressListener progress) {
    return store.read(
        t -> {
          Tally tally = new Tally();
          t.integrity().faults().forEach(tally::fault);
          if (tally.faultCount > 0) {
            return tally.outcome();
          }
          long all = t.holding().passages();
          Map<Long, Calibrations.Entry> calibrations =
              t.calibrations().all().stream()
                  .collect(Collectors.toMap(Calibrations.Entry::id, Function.identity()));
          t.passages()
              .each(
                  row -> {
                    verifyPassage(t, row, calibrations, tally);
                    progress.reached(++tally.passages, all);
                  });
          return tally.outcome();
        });
  }

  private void verifyPassage(
      Transaction t, Passages.Row row, Map<Long, Calibrations.Entry> calibrations, Tally tally) {
    var inForce = t.calibrations().inForce(row.station(), row.firedMs()).orElseThrow();
    if (inForce.id() != row.calibrationId()) {
      tally.fault("Shot %s isn't derived with the gates that hold for it.".formatted(row.shotId()));
    }
    List<Figure> figures = t.figures().history(row.id());
    if (figures.stream().noneMatch(figure -> figure.calibrationId() == row.calibrationId())) {
      tally.fault("Shot %s has no figures.".formatted(row.shotId()));
    }
    OptionalDouble lengthM =
        Beforehand.lengthM(t, t.tags().ofShot(row.id()).orElse(Tags.Pair.NOT_KNOWN));
    for (Figure stored : figures) {
      tally.figures++;
      Figure anew =
          derivation.figure(
              row.id(),
              t.passages().together(row),
              calibrations.get(stored.calibrationId()),
              Derivation.timing(t, row),
              stored.conditions());
      boolean inUse = stored.calibrationId() == row.calibrationId();
      compare(row, stored, anew, inUse ? lengthM : stored.conditions().tagged().lengthM(), tally);
    }
  }

  /**
   * Compares a stored figure with the one derived anew, unless it was read by older rules.
   *
   * @param lengthM of the arrow with which it should have been read
   */
  private static void compare(
      Passages.Row row, Figure stored, Figure anew, OptionalDouble lengthM, Tally tally) {
    if (stored.rulesVersion() != Judge.RULES_VERSION) {
      tally.byOlderRules++;
    } else if (!isSame(numbers(stored), numbers(anew))) {
      tally.fault(
          "The figures of shot %s (calibration %d) don't follow from its edges: %s are stored, and %s follow."
              .formatted(row.shotId(), stored.calibrationId(), numbers(stored), numbers(anew)));
    } else if (!stored.verdict().equals(anew.verdict())) {
      tally.fault(
          "Shot %s is judged \"%s\", and \"%s\" follows."
              .formatted(row.shotId(), stored.verdict(), anew.verdict()));
    } else if (!stored.conditions().tagged().lengthM().equals(lengthM)) {
      tally.fault("Shot %s isn't read with the length of its arrow.".formatted(row.shotId()));
    }
  }

  private static List<Double> numbers(Figure f) {
    return Stream.of(
            f.speedMps(),
            f.speedUOwnMps(),
            f.speedUCommonMps(),
            f.frontMps(),
            f.frontUMps(),
            f.tailMps(),
            f.tailUMps(),
            f.lengthM(),
            f.lengthUM())
        .map(number -> number.orElse(Double.NaN))
        .toList();
  }

  private static boolean isSame(List<Double> stored, List<Double> anew) {
    return IntStream.range(0, stored.size())
        .allMatch(
            i -> isSame(stored.get(i), anew.get(i), UNCERTAINTIES.contains(i) ? NEARLY : ROUNDING));
  }

  private static boolean isSame(double a, double b, double relative) {
    return Double.compare(a, b) == 0 || Math.abs(a - b) <= relative * Math.abs(a);
  }

  private static final class Tally {
    private final List<String> faults = new ArrayList<>();
    private long faultCount;
    private long passages;
    private long figures;
    private long byOlderRules;

    void fault(String sentence) {
      faultCount++;
      if (faults.size() < MOST_TOLD) {
        faults.add(sentence);
      }
    }

    Outcome outcome() {
      return new Outcome(passages, figures, byOlderRules, List.copyOf(faults), faultCount);
    }
  }
}

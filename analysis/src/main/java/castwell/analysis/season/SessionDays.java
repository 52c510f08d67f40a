package castwell.analysis.season;

import castwell.analysis.numeric.Contrast;
import castwell.analysis.uncertainty.TMixture;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;

/**
 * What each session did to all its bows alike, after all shots: the best linear prediction of its
 * day (Henderson, Biometrics 31 (1975) 423; from memory) together with what its conditions do. What
 * a session's own set-up of the gates adds is in it, an error that all sessions share isn't.
 */
public final class SessionDays {
  private final Posterior posterior;
  private final VarianceGrid grid;
  private final double[] centre;

  SessionDays(Posterior posterior, VarianceGrid grid, double... centre) {
    this.posterior = posterior;
    this.grid = grid;
    this.centre = centre;
  }

  /**
   * One session.
   *
   * @param effect by how much the log speeds of all its bows lay above a typical day's: 0.01 is 1 %
   * @param explained the part of that which its conditions explain, without an uncertainty
   */
  public record Day(String session, TMixture effect, double explained) {}

  List<Day> all() {
    double[][] bySpread = posterior.bySpread(there -> moments(there.at(grid.mode()))[1]);
    double[][][] moments = new double[grid.size()][][];
    for (int g = 0; g < moments.length; g++) {
      moments[g] = moments(posterior.at(grid.places()[g]));
    }
    List<Day> days = new ArrayList<>();
    for (int j = 0; j < posterior.layout.sessions(); j++) {
      int session = j;
      double[] mean = Arrays.stream(moments).mapToDouble(at -> at[0][session]).toArray();
      double[] variance = Arrays.stream(moments).mapToDouble(at -> at[1][session]).toArray();
      double[] by = Arrays.stream(bySpread).mapToDouble(bow -> bow[session]).toArray();
      double[] degrees =
          Arrays.stream(variance).map(v -> posterior.spread.degrees(v, by)).toArray();
      double value = 0;
      for (int g = 0; g < mean.length; g++) {
        value += grid.weights()[g] * mean[g];
      }
      TMixture effect = new TMixture(value, mean, variance, degrees, grid.weights());
      days.add(new Day(posterior.layout.sessionName(j), effect, explained(j)));
    }
    return days;
  }

  private double explained(int session) {
    double[] z = posterior.layout.z[session];
    double sum = 0;
    for (int v = 0; v < z.length; v++) {
      sum += z[v] * centre[2 * posterior.layout.stateCount() + v];
    }
    return sum;
  }

  /** Means, then variances, by session: of the day were all else known, and of all else. */
  private double[][] moments(Solution solution) {
    Layout layout = posterior.layout;
    Information known = solution.information;
    double[] unknowns = solution.unknowns();
    double[] covariance = solution.wholeCovariance();
    double[][] moments = new double[2][layout.sessions()];
    for (int j = 0; j < layout.sessions(); j++) {
      double day = known.dayVariance[j];
      Contrast rest = rest(known, j);
      moments[0][j] = day * known.sessionSum[j] + rest.of(unknowns);
      moments[1][j] = day + rest.variance(covariance, unknowns.length);
    }
    return moments;
  }

  /** How a session's day hangs on the unknowns. */
  private Contrast rest(Information known, int session) {
    Layout layout = posterior.layout;
    Tangent tangent = posterior.tangent;
    double day = known.dayVariance[session];
    double[] times = new double[tangent.unknowns];
    int from = layout.blockStart[layout.sessionStart[session]];
    int to = layout.blockStart[layout.sessionStart[session + 1]];
    for (int c = from; c < to; c++) {
      int first = Tangent.DEPENDS * layout.pair[c];
      for (int t = first; t < first + Tangent.DEPENDS; t++) {
        times[tangent.at[t]] -= day * known.cellWeight[c] * tangent.by[t];
      }
    }
    double[] z = layout.z[session];
    for (int v = 0; v < z.length; v++) {
      double left = 1 - day * known.sessionWeight[session];
      times[tangent.unknowns - z.length + v] += z[v] * left;
    }
    int[] at = IntStream.range(0, times.length).filter(i -> times[i] != 0).toArray();
    return Contrast.of(at, Arrays.stream(at).mapToDouble(i -> times[i]).toArray());
  }
}

package castwell.analysis.season;

import castwell.analysis.numeric.ModeSearch;
import castwell.analysis.uncertainty.TMixture;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.IntToDoubleFunction;

/**
 * All bows of a season by one mixed model on the natural log of the speed at the bow,
 *
 * <pre>y = alpha_s - ln(1 + e_s x) / 2 + conditions + day + bow's day + arrow on bow
 *     - h error of mass + shot,
 * </pre>
 *
 * <p>with what days, bows' days and arrows' effects are like (D, W, A) averaged over 125 places of
 * their posterior. So every interval is honest about few sessions too, where the priors count most.
 */
public final class Season {
  /** The log of a standard deviation that is next to none. */
  private static final double NOTHING = Math.log(1e-6);

  private final Posterior posterior;
  private final VarianceGrid grid;
  private final double[][] beta;
  private final double[][] covariance;

  /** By bow, how the covariance changes with the log of the variance of its shots. */
  private final double[][] bySpread;

  private final double[] centre;
  private final List<double[]> shared;

  /**
   * @param weigh makes the grid of the log densities at its places
   */
  private Season(Posterior posterior, double[][] places, Function<double[], VarianceGrid> weigh) {
    this.posterior = posterior;
    shared = List.of();
    beta = new double[places.length][];
    covariance = new double[places.length][];
    double[] logDensity = new double[places.length];
    for (int g = 0; g < places.length; g++) {
      Solution solution = posterior.at(places[g]);
      logDensity[g] = solution.logLikelihood + posterior.priors.logDensity(places[g]);
      beta[g] = solution.step();
      for (int p = 0; p < posterior.tangent.beta.length; p++) {
        beta[g][p] += posterior.tangent.beta[p];
      }
      covariance[g] = solution.covariance();
    }
    grid = weigh.apply(logDensity);
    centre = grid.mean(beta);
    bySpread = posterior.bySpread(there -> there.at(grid.mode()).covariance());
  }

  private Season(Season other, List<double[]> shared) {
    posterior = other.posterior;
    grid = other.grid;
    beta = other.beta;
    covariance = other.covariance;
    centre = other.centre;
    bySpread = other.bySpread;
    this.shared = List.copyOf(shared);
  }

  /**
   * @param cells at least one; no two of the same state, arrow and session
   */
  public static Season fit(List<SeasonCell> cells, Priors priors) {
    return fit(cells, List.of(), priors);
  }

  /**
   * @param covariates what may move all bows' speeds alike; only those that are told by enough
   *     sessions are looked at
   */
  public static Season fit(List<SeasonCell> cells, List<Covariate> covariates, Priors priors) {
    return fit(cells, covariates, priors, priors.centre());
  }

  /**
   * @param start where to look first, such as the mode before the last session
   */
  public static Season fit(
      List<SeasonCell> cells, List<Covariate> covariates, Priors priors, double[] start) {
    Posterior posterior = posterior(cells, covariates, priors);
    ModeSearch.Mode mode = ModeSearch.from(posterior::logDensity, start);
    double[][] places = VarianceGrid.about(mode);
    return new Season(
        posterior,
        places,
        logs -> new VarianceGrid(places, VarianceGrid.weights(logs), mode.place()));
  }

  /** A few bows' cells, with what their whole season told of D, W and A. */
  public static Season fit(
      List<SeasonCell> cells, List<Covariate> covariates, Priors priors, VarianceGrid grid) {
    return new Season(posterior(cells, covariates, priors), grid.places(), logs -> grid);
  }

  public static Season fit(List<SeasonCell> cells, Priors priors, double[] start) {
    return fit(cells, List.of(), priors, start);
  }

  public static Season fit(List<SeasonCell> cells, Priors priors, VarianceGrid grid) {
    return fit(cells, List.of(), priors, grid);
  }

  /**
   * What a few cells of one session tell of that day alone, with the arrows shot: as if nothing
   * differed from day to day, and every arrow did what its mass says.
   */
  public static Season ofOneDay(List<SeasonCell> cells, Priors priors) {
    double[] nothing = new double[] {NOTHING, NOTHING, NOTHING};
    return fit(
        cells, priors, new VarianceGrid(new double[][] {nothing}, new double[] {1}, nothing));
  }

  private static Posterior posterior(
      List<SeasonCell> cells, List<Covariate> covariates, Priors priors) {
    Layout layout = new Layout(cells, covariates);
    return Posterior.of(layout, priors, ShotSpread.of(layout, priors));
  }

  /**
   * The same season, with errors that many cells have in common added to all that is told: a
   * spacing that was never measured anew, a drag coefficient. Each cancels where it is alike.
   *
   * @param errors what one standard uncertainty of each does to each cell's mean log speed, in the
   *     order in which the cells were given
   */
  public Season sharing(List<double[]> errors) {
    Layout layout = posterior.layout;
    double[] before = posterior.at(grid.mode()).step();
    List<double[]> more = new ArrayList<>(shared);
    for (double[] shifts : errors) {
      double[] sorted = new double[shifts.length];
      for (int c = 0; c < sorted.length; c++) {
        sorted[c] = shifts[layout.given[c]];
      }
      double[] step = posterior.shifted(sorted).at(grid.mode()).step();
      for (int p = 0; p < step.length; p++) {
        step[p] -= before[p];
      }
      more.add(step);
    }
    return new Season(this, more);
  }

  public VarianceGrid grid() {
    return grid;
  }

  /** How many there are: below four, how days differ is mostly what was assumed. */
  public int sessions() {
    return posterior.layout.sessions();
  }

  /**
   * @throws IllegalArgumentException for a state without cells
   */
  public StateCurve state(String name) {
    int state = posterior.layout.states.find(name);
    if (state < 0) {
      throw new IllegalArgumentException("no cells of " + name);
    }
    return new StateCurve(this, posterior.layout, state);
  }

  /**
   * What one unit more of a condition does to the log speed of all bows: 0.01 is 1 %. Empty where
   * too few sessions tell it.
   */
  public Optional<TMixture> effect(Covariate covariate) {
    int condition = posterior.layout.covariates.indexOf(covariate);
    Contrast contrast = Contrast.ofCondition(posterior.layout.stateCount(), condition);
    return condition < 0 ? Optional.empty() : Optional.of(contrast(contrast, 0, place -> 0));
  }

  /** What each session did to all its bows, in the order in which sessions first came. */
  public List<SessionDays.Day> days() {
    return new SessionDays(posterior, grid, centre).all();
  }

  /** The variance of the log speed of one of a bow's shots. */
  double shotVariance(int bow) {
    return posterior.spread.variance[bow];
  }

  double eSd() {
    return posterior.priors.eSd();
  }

  double[] centre() {
    return centre;
  }

  double[] beta(int place) {
    return beta[place];
  }

  double[] covariance(int place) {
    return covariance[place];
  }

  double sharedVariance(Contrast contrast) {
    double sum = 0;
    for (double[] shift : shared) {
      double by = contrast.of(shift);
      sum += by * by;
    }
    return sum;
  }

  /**
   * @param offset by how much what is told differs from the contrast, as by a curve that isn't
   *     straight
   * @param more variance to be added, by place
   */
  TMixture contrast(Contrast contrast, double offset, IntToDoubleFunction more) {
    int size = grid.size();
    double[] mean = new double[size];
    double[] variance = new double[size];
    double[] degrees = new double[size];
    double common = sharedVariance(contrast);
    double[] ofBySpread = bySpread(contrast);
    for (int g = 0; g < size; g++) {
      mean[g] = contrast.of(beta[g]) + offset;
      variance[g] =
          contrast.variance(covariance[g], centre.length) + common + more.applyAsDouble(g);
      degrees[g] = degrees(variance[g], ofBySpread);
    }
    return new TMixture(contrast.of(centre) + offset, mean, variance, degrees, grid.weights());
  }

  /** How the variance of it changes with the log of the variance of each bow's shots. */
  double[] bySpread(Contrast contrast) {
    return Arrays.stream(bySpread)
        .mapToDouble(by -> contrast.variance(by, centre.length))
        .toArray();
  }

  double degrees(double variance, double... ofBySpread) {
    return posterior.spread.degrees(variance, ofBySpread);
  }
}

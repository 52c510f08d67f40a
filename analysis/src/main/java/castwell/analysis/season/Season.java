package castwell.analysis.season;

import castwell.analysis.numeric.Contrast;
import castwell.analysis.numeric.ModeSearch;
import castwell.analysis.uncertainty.TMixture;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
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
  private final Posterior posterior;
  private final VarianceGrid grid;
  private final GridEstimates estimates;
  private final double[] centre;
  private final List<double[]> shared;

  private Season(
      Posterior posterior, VarianceGrid grid, GridEstimates estimates, List<double[]> shared) {
    this.posterior = posterior;
    this.grid = grid;
    this.estimates = estimates;
    this.shared = List.copyOf(shared);
    centre = grid.mean(estimates.beta);
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
    Posterior posterior = Posterior.of(cells, covariates, priors);
    ModeSearch.Mode mode = ModeSearch.from(posterior::logDensity, start);
    double[][] places = VarianceGrid.about(mode);
    GridEstimates estimates = new GridEstimates(posterior, places, mode.place());
    double[] weights = VarianceGrid.weights(estimates.logDensity);
    VarianceGrid grid = new VarianceGrid(places, weights, mode.place());
    return new Season(posterior, grid, estimates, List.of());
  }

  /** A few bows' cells, with what their whole season told of D, W and A. */
  public static Season fit(
      List<SeasonCell> cells, List<Covariate> covariates, Priors priors, VarianceGrid grid) {
    Posterior posterior = Posterior.of(cells, covariates, priors);
    GridEstimates estimates = new GridEstimates(posterior, grid.places(), grid.mode());
    return new Season(posterior, grid, estimates, List.of());
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
    return fit(cells, priors, VarianceGrid.ofNothing());
  }

  /**
   * The same season, with errors that many cells have in common added to all that is told: a
   * spacing that was never measured anew, a drag coefficient. Each cancels where it is alike.
   *
   * @param errors what one standard uncertainty of each does to each cell's mean log speed, in the
   *     order in which the cells were given
   */
  public Season sharing(List<double[]> errors) {
    List<double[]> more = new ArrayList<>(shared);
    more.addAll(posterior.responses(errors, grid.mode()));
    return new Season(posterior, grid, estimates, more);
  }

  public VarianceGrid grid() {
    return grid;
  }

  /** How many there are: below four, how days differ is mostly what was assumed. */
  public int sessions() {
    return posterior.layout.sessions();
  }

  /** Whether it has cells of a state. */
  public boolean has(String state) {
    return posterior.layout.states.find(state) >= 0;
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
    Contrast contrast = Contrast.of(new int[] {posterior.tangent.beta.length + condition}, 1);
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
    return estimates.beta[place];
  }

  double[] covariance(int place) {
    return estimates.covariance[place];
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
      mean[g] = contrast.of(estimates.beta[g]) + offset;
      variance[g] =
          contrast.variance(estimates.covariance[g], centre.length)
              + common
              + more.applyAsDouble(g);
      degrees[g] = degrees(variance[g], ofBySpread);
    }
    return new TMixture(contrast.of(centre) + offset, mean, variance, degrees, grid.weights());
  }

  double[] bySpread(Contrast contrast) {
    return estimates.bySpread(contrast);
  }

  double degrees(double variance, double... bySpread) {
    return posterior.spread.degrees(variance, bySpread);
  }
}

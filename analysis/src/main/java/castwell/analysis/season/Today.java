package castwell.analysis.season;

import castwell.analysis.uncertainty.Kind;
import castwell.analysis.uncertainty.Quantity;
import castwell.analysis.uncertainty.Source;
import java.util.List;
import java.util.Optional;

/**
 * What bows did in one session with the arrows shot: no day, no bow's day and no arrow's effect is
 * in the uncertainty, so nothing said here holds on any other day. Own is the shots' scatter,
 * common the session's set-up of the gates, which cancels between its bows.
 */
public final class Today {
  private final Layout layout;
  private final ShotSpread spread;

  private Today(Layout layout, ShotSpread spread) {
    this.layout = layout;
    this.spread = spread;
  }

  /**
   * @param cells of all sessions of the bows asked for, since a bow's shots scatter alike in all
   */
  public static Today of(List<SeasonCell> cells, Priors priors) {
    Layout layout = new Layout(cells, List.of());
    return new Today(layout, ShotSpread.of(layout, priors));
  }

  /** The mean log speed of a cell. */
  public Quantity logSpeed(SeasonCell cell) {
    int bow = layout.bows.find(cell.bow());
    Source shots =
        new Source(
            "shots of " + cell.state() + " with " + cell.arrow() + " in " + cell.session(),
            Kind.OWN,
            spread.degrees[bow],
            "spread of " + cell.bow());
    double u = Math.sqrt(spread.variance[bow] / cell.shots());
    return Quantity.of(cell.meanLog(), u, shots)
        .plus(Quantity.of(0, cell.setUpU(), Source.common("set-up of " + cell.session())));
  }

  /**
   * Log speed of one state less that of another in a session, over the arrows that both shot; empty
   * where there are none.
   */
  public Optional<Quantity> difference(String state, String other, String session) {
    Quantity sum = Quantity.exact(0);
    int arrows = 0;
    for (SeasonCell one : layout.cells) {
      if (one.state().equals(state) && one.session().equals(session)) {
        for (SeasonCell another : layout.cells) {
          if (another.state().equals(other)
              && another.session().equals(session)
              && another.arrow().equals(one.arrow())) {
            sum = sum.plus(logSpeed(one).minus(logSpeed(another)));
            arrows++;
          }
        }
      }
    }
    return arrows == 0 ? Optional.empty() : Optional.of(sum.times(1.0 / arrows));
  }
}

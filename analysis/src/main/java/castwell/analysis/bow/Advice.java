package castwell.analysis.bow;

import java.util.List;

/** What keeps a bow's curve from being trusted, and what to shoot to mend it. */
public sealed interface Advice {
  /** The key under which this advice's words are found. */
  String code();

  /** The figures that stand in its words, in their order. */
  default List<Figure> figures() {
    return List.of();
  }

  /** A figure that stands in an advice's words. */
  sealed interface Figure {}

  /** A mass, or its standard uncertainty. */
  record Mass(double kg) implements Figure {}

  /** A number of shots. */
  record Count(int n) implements Figure {}

  /** A p value. */
  record Probability(double p) implements Figure {}

  /** All shots had one mass, and one mass gives no curve at all. */
  record OneMass(double massKg, double otherKg) implements Advice {
    @Override
    public String code() {
      return "one_mass";
    }

    @Override
    public List<Figure> figures() {
      return List.of(new Mass(massKg), new Mass(otherKg));
    }
  }

  /** There are only two masses, and a curve through two always fits, so nothing tests it. */
  record TwoMasses(double betweenKg) implements Advice {
    @Override
    public String code() {
      return "two_masses";
    }

    @Override
    public List<Figure> figures() {
      return List.of(new Mass(betweenKg));
    }
  }

  /** The virtual mass is hardly known, and other masses would tell it. */
  record TooCloseTogether(
      double virtualMassSeKg, double lightKg, double heavyKg, double expectedSeKg)
      implements Advice {
    @Override
    public String code() {
      return "too_close";
    }

    @Override
    public List<Figure> figures() {
      return List.of(
          new Mass(virtualMassSeKg), new Mass(lightKg), new Mass(heavyKg), new Mass(expectedSeKg));
    }
  }

  /** The virtual mass is hardly known, and only more shots would tell it. */
  record TooFewRepeats(double virtualMassSeKg, int shotsEach, double expectedSeKg)
      implements Advice {
    @Override
    public String code() {
      return "too_few_repeats";
    }

    @Override
    public List<Figure> figures() {
      return List.of(new Mass(virtualMassSeKg), new Count(shotsEach), new Mass(expectedSeKg));
    }
  }

  /** No mass was shot twice, so nothing tells the scatter apart from a misfit of the curve. */
  record NoRepeats() implements Advice {
    @Override
    public String code() {
      return "no_repeats";
    }
  }

  /** The virtual mass can't be told from zero yet, so nothing can be concluded from it. */
  record NotToldFromZero(double virtualMassKg, double lowKg, double highKg) implements Advice {
    @Override
    public String code() {
      return "not_told_from_zero";
    }

    @Override
    public List<Figure> figures() {
      return List.of(new Mass(virtualMassKg), new Mass(lowKg), new Mass(highKg));
    }
  }

  /** The fit gives a virtual mass below zero, which no bow has. */
  record VirtualMassBelowZero(double lightKg, double heavyKg) implements Advice {
    @Override
    public String code() {
      return "below_zero";
    }

    @Override
    public List<Figure> figures() {
      return List.of(new Mass(lightKg), new Mass(heavyKg));
    }
  }

  /** The curve misses the means by more than the scatter explains, so it isn't this bow's. */
  record CurveMisses(double pValue) implements Advice {
    @Override
    public String code() {
      return "curve_misses";
    }

    @Override
    public List<Figure> figures() {
      return List.of(new Probability(pValue));
    }
  }

  /** Heavier arrows weren't slower, so the model has no solution. */
  record HeavierNotSlower() implements Advice {
    @Override
    public String code() {
      return "heavier_not_slower";
    }
  }

  /** There are too few shots for any curve. */
  record TooFewShots(int shots) implements Advice {
    @Override
    public String code() {
      return shots == 0 ? "no_shots" : "too_few_shots";
    }

    @Override
    public List<Figure> figures() {
      return List.of(new Count(shots));
    }
  }
}

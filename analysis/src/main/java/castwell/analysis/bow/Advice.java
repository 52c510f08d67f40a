package castwell.analysis.bow;

import java.util.List;

/** What keeps a bow's curve from being trusted, and what to shoot to mend it. */
public sealed interface Advice {
  /** By which its words are found. */
  String code();

  /** What its words hold, in their order. */
  default List<Figure> figures() {
    return List.of();
  }

  /** A figure of an advice. */
  sealed interface Figure {}

  /** A mass, or its standard uncertainty. */
  record Mass(double kg) implements Figure {}

  /** So many shots. */
  record Count(int n) implements Figure {}

  /** A p value. */
  record Probability(double p) implements Figure {}

  /** No curve at all from one mass. */
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

  /** A curve through two masses always fits. */
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

  /** Nothing tells the scatter apart from the curve. */
  record NoRepeats() implements Advice {
    @Override
    public String code() {
      return "no_repeats";
    }
  }

  /** A cause can't be read off it yet. */
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

  /** No bow has one. */
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

  /** The curve isn't the bow's. */
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

  /** The model has no solution. */
  record HeavierNotSlower() implements Advice {
    @Override
    public String code() {
      return "heavier_not_slower";
    }
  }

  /** Too few for any curve. */
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

package castwell.analysis.bow;

/** What keeps a bow's curve from being trusted, and what to shoot to mend it. */
public sealed interface Advice {
  /** In plain words. */
  String sentence();

  /** No curve at all from one mass. */
  record OneMass(double massGr, double otherGr) implements Advice {
    @Override
    public String sentence() {
      return "Every shot was with %.0f gr: a curve needs three masses well apart. Shoot an arrow near %.0f gr as well, and one between."
          .formatted(massGr, otherGr);
    }
  }

  /** A curve through two masses always fits. */
  record TwoMasses(double betweenGr) implements Advice {
    @Override
    public String sentence() {
      return "Two masses always fit the curve, so nothing tests it: shoot a third, near %.0f gr."
          .formatted(betweenGr);
    }
  }

  /** The virtual mass is hardly known. */
  record TooCloseTogether(
      double virtualMassSeGr, double lightGr, double heavyGr, double expectedSeGr)
      implements Advice {
    @Override
    public String sentence() {
      return "The masses lie too close together: the virtual mass is known to +-%.0f gr only (one standard uncertainty). Five shots each with arrows near %.0f and %.0f gr as well would make it +-%.0f gr."
          .formatted(virtualMassSeGr, lightGr, heavyGr, expectedSeGr);
    }
  }

  /** No bow has one. */
  record VirtualMassBelowZero(double lightGr, double heavyGr) implements Advice {
    @Override
    public String sentence() {
      return "The virtual mass comes out below zero, which no bow's is: a mistyped mass or tag, or masses too close together for the scatter. Check the tags and masses, and shoot arrows near %.0f and %.0f gr."
          .formatted(lightGr, heavyGr);
    }
  }

  /** The curve isn't the bow's. */
  record CurveMisses(double pValue) implements Advice {
    @Override
    public String sentence() {
      return "The curve misses the means by more than the shots scatter (p = %.3f): one arrow's mass or tag may be wrong, or the days differ. Weigh the arrows again, and shoot all of them on one day."
          .formatted(pValue);
    }
  }

  /** The model has no solution. */
  record HeavierNotSlower() implements Advice {
    @Override
    public String sentence() {
      return "Heavier arrows weren't slower, which no bow does: check the masses and tags, and shoot the lightest and the heaviest arrow again on one day.";
    }
  }

  /** Nothing tells the scatter. */
  record TooFewShots(int shots) implements Advice {
    @Override
    public String sentence() {
      return "%d shots count, which is too few for a curve: shoot five of each arrow."
          .formatted(shots);
    }
  }
}

package castwell.analysis.bow;

import java.util.Locale;

/** What keeps a bow's curve from being trusted, and what to shoot to mend it. Masses in grains. */
public sealed interface Advice {
  /** In plain words. */
  String sentence();

  /** No curve at all from one mass. */
  record OneMass(double massGr, double otherGr) implements Advice {
    @Override
    public String sentence() {
      return say(
          "Every shot was with %.0f gr: a curve needs three masses well apart. Shoot an arrow near %.0f gr as well, and one between.",
          massGr, otherGr);
    }
  }

  /** A curve through two masses always fits. */
  record TwoMasses(double betweenGr) implements Advice {
    @Override
    public String sentence() {
      return say(
          "Two masses always fit the curve, so nothing tests it: shoot a third, near %.0f gr.",
          betweenGr);
    }
  }

  /** The virtual mass is hardly known, and other masses would tell it. */
  record TooCloseTogether(
      double virtualMassSeGr, double lightGr, double heavyGr, double expectedSeGr)
      implements Advice {
    @Override
    public String sentence() {
      return say(
          "The masses lie too close together: the virtual mass is known to +-%.0f gr only (one standard uncertainty). Five shots each with arrows near %.0f and %.0f gr as well would make it +-%.0f gr.",
          virtualMassSeGr, lightGr, heavyGr, expectedSeGr);
    }
  }

  /** The virtual mass is hardly known, and only more shots would tell it. */
  record TooFewRepeats(double virtualMassSeGr, int shotsEach, double expectedSeGr)
      implements Advice {
    @Override
    public String sentence() {
      return say(
          "Too few shots for how much they scatter: the virtual mass is known to +-%.0f gr only (one standard uncertainty). %d of each arrow in all would make it about +-%.0f gr; a steadier loose would help too.",
          virtualMassSeGr, shotsEach, expectedSeGr);
    }
  }

  /** Nothing tells the scatter apart from the curve. */
  record NoRepeats() implements Advice {
    @Override
    public String sentence() {
      return "Each arrow was shot once, so nothing tells scatter from a curve that isn't the bow's: shoot five of each.";
    }
  }

  /** A cause can't be read off it yet. */
  record NotToldFromZero(double virtualMassGr, double lowGr, double highGr) implements Advice {
    @Override
    public String sentence() {
      return say(
          "The virtual mass, %.0f gr (%.0f to %.0f), can't be told from none: don't read a cause off it before more arrows are shot.",
          virtualMassGr, lowGr, highGr);
    }
  }

  /** No bow has one. */
  record VirtualMassBelowZero(double lightGr, double heavyGr) implements Advice {
    @Override
    public String sentence() {
      return say(
          "The virtual mass comes out below zero, which no bow's is: a mistyped mass or tag, or masses too close together for the scatter. Check the tags and masses, and shoot arrows near %.0f and %.0f gr.",
          lightGr, heavyGr);
    }
  }

  /** The curve isn't the bow's. */
  record CurveMisses(double pValue) implements Advice {
    @Override
    public String sentence() {
      return say(
          "The curve misses the means by more than the shots scatter (p %s): one arrow's mass or tag may be wrong, or the days differ. Weigh the arrows again, and shoot all of them on one day.",
          pValue < 0.001 ? "< 0.001" : say("= %.3f", pValue));
    }
  }

  /** The model has no solution. */
  record HeavierNotSlower() implements Advice {
    @Override
    public String sentence() {
      return "No curve fits: heavier arrows weren't slower, or lost speed faster than with any bow. Check the masses and tags, and shoot the lightest and the heaviest arrow again on one day.";
    }
  }

  /** Too few for any curve. */
  record TooFewShots(int shots) implements Advice {
    @Override
    public String sentence() {
      return shots == 0
          ? "No shots count yet: shoot five of each arrow."
          : say("%d shots count, too few for a curve: shoot five of each arrow.", shots);
    }
  }

  private static String say(String sentence, Object... facts) {
    return String.format(Locale.ROOT, sentence, facts);
  }
}

package castwell.analysis.gates;

import castwell.analysis.shot.Edge;
import castwell.analysis.shot.EdgeKind;
import castwell.analysis.shot.Gate;
import castwell.analysis.shot.Passage;
import castwell.analysis.speed.Calibration;
import castwell.analysis.speed.Measurement;
import castwell.analysis.speed.Oscillator;
import castwell.analysis.speed.SpeedMeter;
import castwell.analysis.speed.StampLatency;
import castwell.analysis.speed.TickRate;
import castwell.analysis.uncertainty.Quantity;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;

/**
 * A range with something the matter or nothing, and sessions shot on it: each edge scatters by the
 * trigger, stamps are cut to ticks of half a microsecond.
 *
 * @param triggerM standard deviation of the place on the arrow at which a gate triggers
 * @param slowed what share of their speed tails lose, as where a butt is too near
 * @param moreAtBM how much more of an arrow gate B sees than gate A
 * @param spacingOffM the true spacing less the stated one
 * @param honest whether the arrows' lengths and the gates' width are off by what is stated of them
 */
record SimulatedGates(
    double triggerM, double slowed, double moreAtBM, double spacingOffM, boolean honest) {
  static final Calibration CALIBRATION =
      new Calibration(0.6096, 0.0003, 0.001, 2, Oscillator.CRYSTAL);
  private static final TickRate RATE = new TickRate(2_000_000, 0);
  private static final double[] LENGTHS_M = {0.70, 0.74, 0.78};
  private static final double BEFORE_S = 0.01;

  Optional<GateFindings> session(int n, Random random) {
    double width =
        honest ? SpacingFromLengths.WIDTH_M.standardUncertainty() * random.nextGaussian() : 0;
    double spacingOff = spacingOffM;
    if (honest) {
      spacingOff += CALIBRATION.spacingUM() * random.nextGaussian();
    }
    List<KnownLength> known = new ArrayList<>();
    double[] lengths = LENGTHS_M.clone();
    for (int i = 0; i < lengths.length; i++) {
      known.add(new KnownLength("arrow " + i, lengths[i], KnownLength.TAPE_UM));
      lengths[i] += honest ? KnownLength.TAPE_UM * random.nextGaussian() : 0;
    }
    List<GateShot> shots = new ArrayList<>();
    for (int i = 0; i < n; i++) {
      int arrow = i % lengths.length;
      Passage passage = shot(lengths[arrow], width, CALIBRATION.spacingM() + spacingOff, random);
      shots.add(shot(60 * i, passage, known.get(arrow)));
    }
    return GateFindings.of(shots, CALIBRATION);
  }

  private static GateShot shot(double atS, Passage passage, KnownLength known) {
    Measurement told = SpeedMeter.measure(passage, CALIBRATION, RATE, StampLatency.NONE);
    return new GateShot(
        atS,
        value(told.length()),
        GateShot.residualM(
            CALIBRATION.spacingM(), value(told.speed()), value(told.front()), value(told.tail())),
        Optional.of(known));
  }

  private static double value(Optional<Quantity> quantity) {
    return quantity.orElseThrow().value();
  }

  private Passage shot(double lengthM, double widthM, double spacingM, Random random) {
    double mps = 45 + 11 * random.nextDouble();
    double tailMps = mps * (1 - slowed);
    double aM = widthM / 2;
    double bM = (widthM + moreAtBM) / 2;
    return Passage.of(
        List.of(
            edge(1, Gate.A, EdgeKind.BLOCKED, (scatter(random) - aM) / mps),
            edge(2, Gate.B, EdgeKind.BLOCKED, (spacingM + scatter(random) - bM) / mps),
            edge(3, Gate.A, EdgeKind.CLEAR, (lengthM + scatter(random) + aM) / mps),
            edge(
                4,
                Gate.B,
                EdgeKind.CLEAR,
                spacingM / tailMps + (lengthM + scatter(random) + bM) / mps)));
  }

  private double scatter(Random random) {
    return triggerM * random.nextGaussian();
  }

  private static Edge edge(int number, Gate gate, EdgeKind kind, double seconds) {
    return new Edge(number, gate, kind, (long) Math.floor((BEFORE_S + seconds) * RATE.hz()), 0);
  }
}

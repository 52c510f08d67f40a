package castwell.analysis.reading;

/**
 * What the weighing of stories assumes, in SI units. Where no source is named the value was chosen,
 * and tried by simulated disturbances with known truth. All rates are of events a second.
 */
final class Assumed {

  /** Arrows: one in 20 s, as people shoot. */
  static final double ARROWS = 0.05;

  /** Insects and the like at one gate, on a bad evening. */
  static final double CLUTTER = 0.1;

  /** Balls, sticks and leaves that go through both gates. */
  static final double OBJECTS = 0.002;

  /** How often one edge of an arrow is hidden, or never stamped. Such arrows don't count anyway. */
  static final double MISSING = 0.005;

  /** How often a front is stamped at a wrong place: points let no light through. */
  static final double FRONT_SPOILT = 0.01;

  /** How often a tail is: nocks and fletching do. */
  static final double TAIL_SPOILT = 0.04;

  /** How far a spoilt edge is off, as the scale of a Laplace distribution. */
  static final double SPOILT_M = 0.020;

  /** How far it is off at most. */
  static final double MOST_SPOILT_M = 0.100;

  /**
   * Which share of arrows is as fast and as long as is usual; the rest is anywhere in the limits.
   */
  static final double USUAL = 0.8;

  /** The usual speed with its standard deviation: common practice for wooden bows. */
  static final Known USUAL_SPEED = new Known(50, 15);

  /** The usual length, likewise. */
  static final Known USUAL_LENGTH = new Known(0.75, 0.07);

  /** How often the tag names the right arrow. */
  static final double TAG_TRUSTED = 0.9;

  /** How much longer or shorter gates see an arrow than it is: triggers' width, and the nock. */
  static final double TAG_U_M = 0.005;

  /** How often an arrow is as fast as its cell. */
  static final double CELL_TRUSTED = 0.9;

  /** The least relative scatter of a cell's speed. */
  static final double LEAST_CELL_U = 0.015;

  /** The logarithm of how many times longer the longest blocked run is than the shortest. */
  static final double DURATIONS = Math.log(10 / 1e-4);

  /** The shortest blocked run that is told from a shorter one. */
  static final double SHORTEST_S = 1e-4;

  /** How likely an edge that belongs to no run is, against a run. */
  static final double UNPAIRED = 0.5;

  /** How many strays at one gate come by chance; more are a swarm, in which each is likelier. */
  static final int FEW_STRAYS = 2;

  /** How often fletching lets light through once more. */
  static final double FLUTTER = 0.3;

  /** How often a comparator bounces after a true edge, and before one. */
  static final double BOUNCE_AFTER = 0.05;

  static final double BOUNCE_BEFORE = 0.01;

  /** How far a bounce is from its edge, as the scale of an exponential distribution; at most. */
  static final double BOUNCE_S = 4e-4;

  static final double MOST_BOUNCE_S = 3e-3;

  /** How often light comes through a shaft or between feathers, anywhere; how wide that is. */
  static final double LIGHT = 0.005;

  static final double LIGHT_M = 0.05;

  /** How often a lamp flickers; its periods are from mains of 50 and 60 Hz to slow controllers. */
  static final double LAMP = 1e-3;

  static final double SHORTEST_PERIOD_S = 0.004;
  static final double LONGEST_PERIOD_S = 0.025;

  /** How far a lamp's steps are off its period, as the scale of a Laplace distribution. */
  static final double LAMP_S = 5e-4;

  /** How much longer or shorter than arrows' limits an interval may be, with spoilt edges in it. */
  static final double INTERVAL_BELOW = 0.8;

  static final double INTERVAL_ABOVE = 1.25;

  /** How much likelier an arrow must be than the best story without it: a thousand, three times. */
  static final double SURE_NATS = Math.log(3000);

  /** Edges so near in flight are one arrow's, told twice. */
  static final double ALIKE_M = 0.16;

  static final double ALIKE_SPEED = 0.1;

  /** How much less likely a story may be, to have a say in the speed. */
  static final double HEARD_NATS = 7;

  /** A speed of more weight than this lies within so many uncertainties: the goal itself. */
  static final double REACHED_WEIGHT = 0.02;

  static final double REACHED_U = 2.5;

  /** Beyond this relative uncertainty, front and tail don't tell a speed. */
  static final double MOST_RELATIVE_U = 0.05;

  /**
   * Of more edges at one gate no story is sought. The board itself passes on 32 edges in 100 ms, so
   * it is a flood.
   */
  static final int MOST_EDGES = 40;

  /** Nor of more pairs of a front and a later tail; so many are in that many edges in turn. */
  static final int MOST_PAIRS = MOST_EDGES / 2 * (MOST_EDGES / 2 + 1) / 2;

  /** Of how many of the best arrows two may be one story. */
  static final int BEST_ARROWS = 12;

  private Assumed() {}
}

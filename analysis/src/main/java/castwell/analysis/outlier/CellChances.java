package castwell.analysis.outlier;

/**
 * What one cell tells at each standard deviation that its bow's shots may have.
 *
 * @param logEvidence the log of the cell's likelihood, by standard deviation
 * @param chance by shot and standard deviation, how likely the shot is a stray
 */
record CellChances(double[] logEvidence, double[][] chance) {
  private static final int MOST_SUMMED = 12;

  /**
   * The sum over subsets doubles with each shot; where there are more, their mean is known well
   * enough to judge each shot by it.
   *
   * @param kept which shots are no strays, whatever they look like
   */
  static CellChances of(double[] values, boolean[] kept) {
    return values.length <= MOST_SUMMED
        ? new CellSubsets(values, kept).chances()
        : new CellMixture(values, kept).chances();
  }
}

package castwell.web.report;

/**
 * One column of a report's table.
 *
 * @param key of the value in a row
 * @param heading with its unit
 * @param decimals how many of a number are shown to people
 */
public record ReportColumn(String key, String heading, int decimals) {

  public static ReportColumn text(String key, String heading) {
    return new ReportColumn(key, heading, 0);
  }
}

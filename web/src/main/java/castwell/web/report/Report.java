package castwell.web.report;

import java.util.List;

/**
 * An answer: what one would read aloud, the tables that stand under it, and all of it as data.
 *
 * @param sentences the answer first
 * @param tables the most telling first; it is the one that a spreadsheet gets
 * @param data as the API tells it, in trade units, at full precision
 */
public record Report<D>(List<String> sentences, List<ReportTable<?>> tables, D data) {

  public Report {
    sentences = List.copyOf(sentences);
    tables = List.copyOf(tables);
  }
}

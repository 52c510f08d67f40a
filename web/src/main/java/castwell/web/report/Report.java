package castwell.web.report;

import java.util.List;
import java.util.Map;

/**
 * An answer: what one would read aloud, the tables that stand under it, and all of it as data.
 *
 * @param sentences the answer first
 * @param tables the most telling first; it is the one that a spreadsheet gets
 * @param data by the names of the API, in trade units, at full precision; null is "can't tell"
 */
public record Report(List<String> sentences, List<ReportTable> tables, Map<String, Object> data) {

  public Report {
    sentences = List.copyOf(sentences);
    tables = List.copyOf(tables);
  }
}

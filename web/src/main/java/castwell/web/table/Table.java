package castwell.web.table;

import castwell.capture.store.Transaction;
import castwell.capture.view.Column;
import java.util.List;
import java.util.function.Consumer;

/** Columns, and a way to go through the rows. */
public record Table<R>(List<Column<R>> columns, Rows<R> rows) {

  /** Hands every row to the consumer. */
  @FunctionalInterface
  public interface Rows<R> {
    void each(Transaction transaction, Consumer<R> row);
  }
}

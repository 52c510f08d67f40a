package castwell.capture.intake;

import castwell.capture.intake.sheet.CantRead;
import castwell.capture.intake.sheet.Complaints;
import castwell.capture.intake.sheet.Line;

/** Takes lines into the store, one by one, within one transaction. */
interface Intake {

  /**
   * @throws CantRead or {@link castwell.capture.command.Refused} when the line can't be taken in
   */
  void take(Line line);

  /** Is called after the last line. */
  default void finish(Complaints complaints) {}

  Tally tally();
}

package castwell.capture.intake;

import castwell.capture.intake.sheet.SheetKind;
import java.util.Map;

/**
 * A sheet that somebody brings.
 *
 * @param source the file's name, which is kept with every shot and becomes part of the names of
 *     shots without one
 * @param text the content as CSV
 * @param map its headings to ours, where they differ
 * @param uncertainty of speeds that don't come with their own
 * @param by who brings it
 */
public record Brought(
    SheetKind kind,
    String source,
    String text,
    Map<String, String> map,
    HandUncertainty uncertainty,
    String by) {}

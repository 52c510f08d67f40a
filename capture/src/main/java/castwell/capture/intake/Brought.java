package castwell.capture.intake;

import castwell.capture.intake.sheet.SheetKind;
import java.util.Map;

/**
 * A sheet that somebody brings.
 *
 * @param source its file's name: told with every shot, and part of the names of those without one
 * @param text in CSV
 * @param map its headings to ours, where they differ
 * @param uncertainty of a speed that doesn't tell its own
 * @param by who brings it
 */
public record Brought(
    SheetKind what,
    String source,
    String text,
    Map<String, String> map,
    HandUncertainty uncertainty,
    String by) {}

package castwell.capture.view.report.rework;

import com.fasterxml.jackson.annotation.JsonUnwrapped;

/** The change at as many grains per pound as before. */
public record SameGppView(@JsonUnwrapped ChangeView change, double gpp) {}

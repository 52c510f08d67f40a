package castwell.capture.view.rack;

/** Whether a bow or an arrow is out of use. */
public record Retired(String name, boolean retired) {}

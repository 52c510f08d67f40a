package castwell.capture.view.data;

import castwell.capture.view.Meaning;

/** What the browser that asks may do. */
public record AdmissionView(
    boolean mayWatch,
    boolean mayChange,
    @Meaning("whether by a cookie of which they can be rid") boolean entered) {}

package castwell.capture.view.data;

import castwell.capture.view.Meaning;
import java.util.List;

/** What became of a sheet. */
public record TakenView(
    @Meaning("how many are new, those set aside among them") int taken,
    int setAside,
    @Meaning("how many were there as they are") int already,
    @Meaning("headings that aren't ours, each with what it may be a slip for")
        List<String> notRead) {}

package castwell.capture.view.broker;

import castwell.capture.view.AtLeast;
import castwell.capture.view.Meaning;
import java.util.Optional;

/** Says that what was told before may not hold any more. */
public record RefreshTold(
    @AtLeast(1)
        @Meaning(
            "number of the feed's item that this tells of: it rises, and comes again when the message does")
        long event,
    @Meaning("where the gates stand") String station,
    @Meaning(
            "shots: figures of earlier shots were derived anew, export them; rack: something about bows or arrows; joined: the shot named was part of another, and is none of its own any more")
        Changed what,
    @Meaning("which shot, where it is one") Optional<String> shotId) {}

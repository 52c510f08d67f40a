package castwell.capture.publish;

import castwell.analysis.wording.Phrase;
import castwell.analysis.wording.Wording;
import castwell.capture.command.Commands;
import castwell.capture.command.Refused;
import castwell.capture.publish.broker.Message;
import castwell.capture.store.StoreUnavailable;
import castwell.capture.view.broker.TagWish;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Queue;
import java.util.concurrent.ArrayBlockingQueue;
import java.util.concurrent.atomic.AtomicLong;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** Wishes on tags that others sent over the broker and that still wait to be carried out. */
final class TagWishes {
  private static final Logger LOG = LoggerFactory.getLogger(TagWishes.class);
  private static final int MOST_WAITING = 16;

  private final String station;
  private final Commands commands;
  private final Wording wording;
  private final Queue<Message> waiting = new ArrayBlockingQueue<>(MOST_WAITING);
  private final AtomicLong refused = new AtomicLong();

  TagWishes(String station, Commands commands, Wording wording) {
    this.wording = wording;
    this.station = station;
    this.commands = commands;
  }

  /**
   * Adds a wish without ever waiting: when they come faster than they can be granted, it is
   * refused.
   */
  void add(Message message) {
    if (!waiting.offer(message)) {
      refuse(wording.say(Phrase.of("refused.too_many_wishes")));
    }
  }

  /** Carries the wishes out, and returns a sentence for each that can't be. */
  List<String> grant() {
    List<String> refusals = new ArrayList<>();
    for (Message next = waiting.poll(); next != null; next = waiting.poll()) {
      grant(next).ifPresent(refusals::add);
    }
    return refusals;
  }

  private Optional<String> grant(Message message) {
    try {
      TagWish wish = TagWish.of(message.payload());
      commands.tag(station, wish.bow(), wish.arrow(), "mqtt");
      return Optional.empty();
    } catch (Refused | StoreUnavailable e) {
      return refuse(wording.say(e.phrase()));
    }
  }

  private Optional<String> refuse(String sentence) {
    refused.incrementAndGet();
    LOG.warn("{}: {}", station, sentence);
    return Optional.of(sentence);
  }

  /** How many wishes were refused since the start. */
  long refused() {
    return refused.get();
  }
}

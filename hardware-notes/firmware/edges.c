#include "edges.h"

#include <avr/io.h>

#include "clock.h"
#include "keep.h"
#include "losses.h"
#include "stamp.h"

#define CHAINED_TICKS 8     // so soon after another stamp's end this edge may have waited for it
#define INTERRUPT_TICKS 20  // longer than any one of the interrupts takes
#define BYTE_IN_TICKS 8     // longer than the interrupt of a byte takes
#define TIMER_TICKS 8       // longer than the timers' interrupts take together
#define TIMER_PERIOD 0x2000 // they come where these low bits of the counter are 0
#define FLOOD_TICKS (HZ / 10)
#define FLOOD_EDGES 32
#define CALM_EDGES 8

struct watch {
  uint8_t pin;
  uint8_t flag;
  bool clear;        // the level as the edges so far have it
  bool flooding;
  uint8_t losses;    // stamp_losses as of its last stamp
  uint8_t count;     // in this tenth of a second
  uint32_t since;
};

static struct watch watches[2] = {{_BV(PIND2), _BV(INTF0), true, false, 0, 0, 0},
                                  {_BV(PIND3), _BV(INTF1), true, false, 0, 0, 0}};
static uint32_t merged;
static uint8_t before_gate;
static uint8_t before_losses;
static uint16_t before_late;
static uint32_t before_ticks;
static uint32_t before_end;

void edges_start(void) {
  EICRA = _BV(ISC00) | _BV(ISC10); // any change
  EIFR = _BV(INTF0) | _BV(INTF1);
  uint8_t pins = PIND;
  watches[0].clear = pins & watches[0].pin;
  watches[1].clear = pins & watches[1].pin;
  EIMSK = _BV(INT0) | _BV(INT1);
}

bool edges_waiting(void) {
  return stamp_tail != stamp_head;
}

uint32_t edges_merged(void) {
  return merged;
}

char edges_level(uint8_t gate) {
  return PIND & watches[gate].pin ? 'C' : 'B';
}

// The most ticks by which the stamp may be late, because of interrupts that may have run meanwhile.
static uint16_t lateness(const struct stamp *stamp, uint8_t gate, uint32_t ticks) {
  uint16_t late = 0;
  if (stamp->losses != before_losses) {
    late = gate == 0 ? INTERRUPT_TICKS : 0x100; // gate B may have waited for many of A's
  } else if (ticks - before_end <= CHAINED_TICKS) {
    late = (uint16_t)(ticks - before_ticks) + 1;
    if (gate == 1 && before_gate == 0) {
      late += before_late; // gate A goes first, again and again
    }
  }
  if (stamp->gate & BYTES_IN) {
    late += BYTE_IN_TICKS;
  }
  uint16_t since_timers = (uint16_t)ticks & (TIMER_PERIOD - 1);
  if (since_timers < TIMER_TICKS) {
    late += since_timers + 1;
  }
  before_gate = gate;
  before_losses = stamp->losses;
  before_late = late;
  before_ticks = ticks;
  before_end = ticks + (uint8_t)(stamp->end - stamp->ticks_low);
  return late;
}

// What the level says of what happened. Where it is what it was, there were two edges: did the
// second come so late that it has its own stamp?
static char kind(struct watch *watch, const struct stamp *stamp) {
  bool clear = stamp->pins & watch->pin;
  bool another = stamp->flags & watch->flag;
  if (stamp->losses != watch->losses) { // the edges so far don't tell the level
    watch->losses = stamp->losses;
    watch->clear = another ? clear : !clear;
  }
  if (clear == watch->clear && !another) {
    return 'G';
  }
  watch->clear = !watch->clear;
  return watch->clear ? 'C' : 'B';
}

static bool flooding(struct watch *watch, uint32_t ticks) {
  uint32_t elapsed = ticks - watch->since;
  if (elapsed > FLOOD_TICKS) {
    if (watch->count <= CALM_EDGES || elapsed > 2 * FLOOD_TICKS) {
      watch->flooding = false;
    }
    watch->since = ticks;
    watch->count = 0;
  }
  if (watch->count < 0xFF) {
    watch->count++;
  }
  if (watch->count > FLOOD_EDGES) {
    watch->flooding = true;
  }
  return watch->flooding;
}

static uint32_t joined(uint8_t overflows, uint8_t high, uint8_t low) {
  return clock_overflows(overflows) << 16 | (uint16_t)(high << 8 | low);
}

// The interrupts count in one bank while the other is read, so neither waits for the other.
static void collect_losses(void) {
  uint8_t bank = stamp_bank;
  if (stamp_lost[bank].count == 0 && stamp_lost[bank + 1].count == 0) {
    return;
  }
  stamp_bank = bank ^ 2;
  __asm__ volatile("" ::: "memory");
  for (uint8_t gate = 0; gate < 2; gate++) {
    struct stamp_loss *lost = &stamp_lost[bank + gate];
    if (lost->count != 0) {
      losses_add(gate, lost->count, joined(lost->first[2], lost->first[1], lost->first[0]),
                 joined(lost->last[2], lost->last[1], lost->last[0]));
      lost->count = 0;
    }
  }
  __asm__ volatile("" ::: "memory");
}

void edges_collect(void) {
  collect_losses();
  if (!edges_waiting()) {
    return;
  }
  const struct stamp stamp = stamps[stamp_tail / sizeof(struct stamp)];
  stamp_tail += sizeof(struct stamp);
  uint8_t gate = stamp.gate & 1;
  struct watch *watch = &watches[gate];
  uint32_t ticks = joined(stamp.overflows, stamp.ticks_high, stamp.ticks_low);
  uint16_t late = lateness(&stamp, gate, ticks);
  char what = kind(watch, &stamp);
  if (flooding(watch, ticks) || late > 0xFF || !keep_add(gate, what, ticks, (uint8_t)late)) {
    losses_add(gate, what == 'G' ? 2 : 1, ticks, ticks);
  } else if (what == 'G') {
    merged++;
  }
}

#include "losses.h"

#include "clock.h"

static struct loss losses[2];
static uint32_t total;
static uint32_t told_at;
static uint8_t told_gate;

void losses_add(uint8_t gate, uint32_t count, uint32_t first, uint32_t last) {
  struct loss *loss = &losses[gate];
  if (loss->count == 0) {
    loss->first = first;
  }
  loss->count += count;
  loss->last = last;
  total += count;
}

uint32_t losses_total(void) {
  return total;
}

bool losses_take(uint32_t now, uint8_t *gate, struct loss *loss) {
  uint8_t next = told_gate ^ 1; // in turn, lest one gate's chatter hides the other's
  if (losses[next].count == 0) {
    next ^= 1;
  }
  if (losses[next].count == 0 || now - told_at < HZ / 10) {
    return false;
  }
  *gate = next;
  *loss = losses[next];
  losses[next].count = 0;
  told_gate = next;
  told_at = now;
  return true;
}

#include "keep.h"

static struct edge edges[KEEP];
static uint32_t highest; // the last edge's number
static uint32_t sent;    // the last one that was ever sent
static uint32_t next = 1;

bool keep_add(uint8_t gate, char kind, uint32_t ticks, uint8_t late) {
  if (highest - sent == KEEP) {
    return false;
  }
  highest++;
  struct edge *edge = &edges[highest % KEEP];
  edge->ticks = ticks;
  edge->late = late;
  edge->what = (uint8_t)(gate << 7) | (uint8_t)kind;
  return true;
}

uint32_t keep_highest(void) {
  return highest;
}

void keep_send_from(uint32_t edge) {
  next = edge == 0 ? 1 : edge > highest ? highest + 1 : edge;
  if (next > sent + 1) {
    next = sent + 1;
  }
}

static uint32_t oldest(void) {
  return highest < KEEP ? 1 : highest - KEEP + 1;
}

bool keep_take_missing(uint32_t *first, uint32_t *last) {
  if (next >= oldest()) {
    return false;
  }
  *first = next;
  *last = oldest() - 1;
  next = oldest();
  return true;
}

bool keep_take(uint32_t *number, struct edge *edge) {
  if (next > highest) {
    return false;
  }
  *number = next;
  *edge = edges[next % KEEP];
  if (next > sent) {
    sent = next;
  }
  next++;
  return true;
}

bool keep_waiting(void) {
  return next <= highest;
}

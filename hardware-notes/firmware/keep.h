// The last edges, sent or not. What was never sent is never overwritten.
#pragma once

#include <stdbool.h>
#include <stdint.h>

#define KEEP 128

struct edge {
  uint32_t ticks;
  uint8_t late;
  uint8_t what; // bit 7: gate B; the rest: 'B', 'C' or 'G'
};

// Whether there was room; numbers count from 1.
bool keep_add(uint8_t gate, char kind, uint32_t ticks, uint8_t late);
uint32_t keep_highest(void);

// Every kept edge from this number on is to be sent again.
void keep_send_from(uint32_t edge);

// What is to be told next: edges no longer kept, or an edge; both name themselves once.
bool keep_take_missing(uint32_t *first, uint32_t *last);
bool keep_take(uint32_t *number, struct edge *edge);
bool keep_waiting(void);

// Edges that couldn't be kept: counted, and told ten times a second at most.
#pragma once

#include <stdbool.h>
#include <stdint.h>

struct loss {
  uint32_t count;
  uint32_t first;
  uint32_t last;
};

void losses_add(uint8_t gate, uint32_t count, uint32_t first, uint32_t last);
uint32_t losses_total(void);

// Takes a gate's losses that are to be told now, if there are any.
bool losses_take(uint32_t now, uint8_t *gate, struct loss *loss);

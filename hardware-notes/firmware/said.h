// Says whatever is due, a sentence at a time, where the line has room.
#pragma once

#include <stdbool.h>
#include <stdint.h>

void said_start(uint16_t boot);
void said_identity_wanted(void);
void said_poll(uint64_t now);

// Whether something is to be said before the next interrupt wakes the board.
bool said_soon(uint32_t now);

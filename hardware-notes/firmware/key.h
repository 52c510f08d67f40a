// The key on PD4, to ground. Long is told while it is still held.
#pragma once

#include <stdbool.h>
#include <stdint.h>

void key_start(void);
void key_poll(uint32_t now);

// 'S' or 'L' and when it went down, once a press.
bool key_take(char *press, uint32_t *ticks);

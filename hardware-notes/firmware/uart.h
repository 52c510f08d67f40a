// The serial line, 115200 baud. Nothing here waits.
#pragma once

#include <stdbool.h>
#include <stdint.h>

void uart_start(void);

// Puts the next byte on the wire where it takes one. To be called often.
void uart_poll(void);
void uart_put(char c);

uint8_t uart_room(void);

// Bytes that are not yet on the wire.
uint8_t uart_queued(void);

// The next byte that the host sent, or -1.
int16_t uart_heard(void);

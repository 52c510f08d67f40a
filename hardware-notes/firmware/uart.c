#include "uart.h"

#include <avr/io.h>

#include "stamp.h"

static char waiting[256];
static uint8_t head, tail; // wrap as bytes do
static uint8_t heard_tail;

void uart_start(void) {
  UCSR0A = _BV(U2X0);
  UCSR0C = _BV(UCSZ01) | _BV(UCSZ00);
  UBRR0 = 16; // 117647 baud: 2.1 % fast, as near as 16 MHz comes
  UCSR0B = _BV(RXEN0) | _BV(TXEN0) | _BV(RXCIE0);
}

void uart_poll(void) {
  if (head != tail && UCSR0A & _BV(UDRE0)) {
    UDR0 = (uint8_t)waiting[tail++];
  }
}

void uart_put(char c) {
  waiting[head++] = c;
  uart_poll();
}

uint8_t uart_room(void) {
  return (uint8_t)(tail - head - 1);
}

uint8_t uart_queued(void) {
  return (uint8_t)(head - tail) + (UCSR0A & _BV(UDRE0) ? 0 : 1);
}

int16_t uart_heard(void) {
  if (heard_tail == heard_head) {
    return -1;
  }
  uint8_t c = heard[heard_tail];
  heard_tail = (heard_tail + 1) % HEARD_BYTES;
  return c;
}

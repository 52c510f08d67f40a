#include "sentence.h"

#include <avr/pgmspace.h>
#include <stdlib.h>
#include <util/crc16.h>

#include "uart.h"

static uint16_t line;
static uint16_t crc;

static void put(char c) {
  crc = _crc_xmodem_update(crc, (uint8_t)c);
  uart_put(c);
}

static void put_text(const char *text) {
  while (*text) {
    put(*text++);
  }
}

void sentence_begin(char type) {
  uart_put('$');
  crc = 0xFFFF;
  put(type);
  sentence_number(line++);
}

void sentence_number(uint32_t number) {
  char digits[11];
  put(',');
  put_text(ultoa(number, digits, 10));
}

// By subtraction: dividing 64 bits takes this chip a millisecond.
void sentence_long(uint64_t number) {
  static const uint64_t powers[] PROGMEM = {
      100000000000000, 10000000000000, 1000000000000, 100000000000, 10000000000,
      1000000000,      100000000,      10000000,      1000000,      100000,
      10000,           1000,           100,           10,           1};
  bool begun = false;
  put(',');
  for (uint8_t i = 0; i < sizeof powers / sizeof powers[0]; i++) {
    uint64_t power;
    memcpy_P(&power, &powers[i], sizeof power);
    char digit = '0';
    while (number >= power) {
      number -= power;
      digit++;
    }
    begun |= digit != '0' || power == 1;
    if (begun) {
      put(digit);
    }
  }
}

void sentence_signed(int16_t number) {
  char digits[7];
  put(',');
  put_text(itoa(number, digits, 10));
}

void sentence_text(const char *text) {
  put(',');
  put_text(text);
}

void sentence_character(char c) {
  put(',');
  put(c);
}

void sentence_pair(char a, char b) {
  put(',');
  put(a);
  put(b);
}

void sentence_unknown(void) {
  put(',');
}

void sentence_end(void) {
  uint16_t check = crc;
  uart_put('*');
  for (uint8_t i = 0; i < 4; i++) {
    uint8_t digit = check >> 12;
    uart_put((char)(digit < 10 ? '0' + digit : 'A' - 10 + digit));
    check <<= 4;
  }
  uart_put('\r');
  uart_put('\n');
}

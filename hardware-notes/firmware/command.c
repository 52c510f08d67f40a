#include "command.h"

#include "keep.h"
#include "uart.h"

#define LONGEST 18 // R,65535,4294967295

static char line[LONGEST];
static uint8_t length; // more than fits: a line that is passed over

static bool number(const char **from, const char *end, uint32_t *value) {
  const char *start = *from;
  *value = 0;
  while (*from < end && **from >= '0' && **from <= '9') {
    uint8_t digit = (uint8_t)(*(*from)++ - '0');
    if (*value > (UINT32_MAX - digit) / 10) {
      return false;
    }
    *value = *value * 10 + digit;
  }
  return *from > start;
}

static bool asks_for_identity(uint16_t boot) {
  const char *from = line + 1;
  const char *end = line + length;
  uint32_t asked_boot, edge;
  if (length == 1 && line[0] == '?') {
    return true;
  }
  if (length < 2 || line[0] != 'R' || *from++ != ',' || !number(&from, end, &asked_boot) ||
      from == end || *from++ != ',' || !number(&from, end, &edge) || from != end) {
    return false;
  }
  if (asked_boot != boot) {
    return true;
  }
  keep_send_from(edge);
  return false;
}

bool command_poll(uint16_t boot) {
  bool asked = false;
  for (int16_t c = uart_heard(); c >= 0; c = uart_heard()) {
    if (c == '\n') {
      asked |= length <= LONGEST && asks_for_identity(boot);
      length = 0;
    } else if (c != '\r') {
      if (length < LONGEST) {
        line[length] = (char)c;
      }
      length += length <= LONGEST;
    }
  }
  return asked;
}

#include "rig.h"

#include <simavr/avr_uart.h>
#include <string.h>

#define BOARD_BYTE (10 * 8 * 17) // cycles, at the speed the board can make
#define HOST_BYTE (10 * HZ / 115200)

static FILE *out;
static char line[256];
static size_t length;
static uint64_t wire_free;
static char said[4096];
static size_t said_from, said_to;
static bool saying;

static void record(uint8_t byte, uint64_t at) {
  if (byte == '\n' || length == sizeof line - 1) {
    fprintf(out, "%llu ", (unsigned long long)(at / (HZ / 1000000)));
    for (size_t i = 0; i < length; i++) {
      unsigned char c = (unsigned char)line[i];
      if (c == '\r' && i == length - 1) {
        continue;
      }
      fprintf(out, c < 0x20 || c > 0x7E || c == '\\' ? "\\x%02X" : "%c", c);
    }
    fputc('\n', out);
    length = 0;
  } else {
    line[length++] = (char)byte;
  }
}

static void from_board(struct avr_irq_t *irq, uint32_t value, void *param) {
  (void)irq, (void)param;
  wire_free = (avr->cycle > wire_free ? avr->cycle : wire_free) + BOARD_BYTE;
  if (out != NULL) {
    record((uint8_t)value, wire_free);
  }
  if (cable_wanted()) {
    cable_byte((uint8_t)value);
  }
}

static avr_cycle_count_t to_board(avr_t *chip, avr_cycle_count_t when, void *param) {
  (void)param;
  saying = said_from != said_to;
  if (!saying) {
    return 0;
  }
  avr_raise_irq(avr_io_getirq(chip, AVR_IOCTL_UART_GETIRQ('0'), UART_IRQ_INPUT),
                (uint8_t)said[said_from]);
  said_from = (said_from + 1) % sizeof said;
  return when + HOST_BYTE;
}

void line_say(const char *text, size_t bytes) {
  for (size_t i = 0; i < bytes; i++) {
    said[said_to] = text[i];
    said_to = (said_to + 1) % sizeof said;
    if (said_to == said_from) {
      fail("the host says more than the line carries: let it say less, or later.");
    }
  }
  if (!saying) {
    saying = true;
    avr_cycle_timer_register(avr, HOST_BYTE, to_board, NULL);
  }
}

void line_start(const char *recording) {
  if (recording != NULL) {
    out = strcmp(recording, "-") == 0 ? stdout : fopen(recording, "w");
    if (out == NULL) {
      fail("%s can't be written.", recording);
    }
    fprintf(out, "# recording: 1\n# name: rig\n# started: 2026-01-01T00:00:00Z\n");
  }
  avr_irq_register_notify(avr_io_getirq(avr, AVR_IOCTL_UART_GETIRQ('0'), UART_IRQ_OUTPUT), from_board,
                          NULL);
}

void line_after_reset(void) {
  length = 0;
  if (saying) {
    avr_cycle_timer_register(avr, HOST_BYTE, to_board, NULL);
  }
}

void line_end(void) {
  if (out != NULL) {
    fflush(out);
  }
}

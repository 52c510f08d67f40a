#include "rig.h"

#include <stdarg.h>
#include <stdlib.h>
#include <string.h>

void fail(const char *format, ...) {
  va_list arguments;
  va_start(arguments, format);
  vfprintf(stderr, format, arguments);
  va_end(arguments);
  fputc('\n', stderr);
  exit(2);
}

// The simulator's own remarks go nowhere, but what it calls an error ends the run.
static void heed(avr_t *chip, const int level, const char *format, va_list arguments) {
  (void)chip;
  if (level == LOG_ERROR) {
    vfprintf(stderr, format, arguments);
    exit(3);
  }
}

static const char *usage =
    "usage: rig FIRMWARE.elf SCRIPT [--out RECORDING] [--truth FILE] [--measures FILE] [--eeprom FILE] "
    "[--seed NUMBER] [--pty LINK]";

int main(int argc, char **argv) {
  const char *recording = NULL, *truth = NULL, *measures = NULL, *eeprom = NULL, *link = NULL;
  unsigned seed = 1;
  if (argc < 3) {
    fail("%s", usage);
  }
  for (int i = 3; i < argc; i += 2) {
    const char *option = argv[i], *value = argv[i + 1];
    if (value == NULL) {
      fail("%s", usage);
    } else if (strcmp(option, "--out") == 0) {
      recording = value;
    } else if (strcmp(option, "--truth") == 0) {
      truth = value;
    } else if (strcmp(option, "--measures") == 0) {
      measures = value;
    } else if (strcmp(option, "--eeprom") == 0) {
      eeprom = value;
    } else if (strcmp(option, "--seed") == 0) {
      seed = (unsigned)strtoul(value, NULL, 10);
    } else if (strcmp(option, "--pty") == 0) {
      link = value;
    } else {
      fail("%s", usage);
    }
  }
  avr_global_logger_set(heed);
  script_read(argv[2]);
  eeprom_seed(seed);
  eeprom_load(eeprom);
  board_start(argv[1]);
  measure_start();
  line_start(recording);
  if (truth != NULL) {
    measure_truth(truth);
  }
  if (link != NULL) {
    cable_start(link);
  }
  board_run();
  cable_drain();
  line_end();
  eeprom_save();
  measure_print(measures);
  return 0;
}

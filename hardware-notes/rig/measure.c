#include "rig.h"

#include <simavr/avr_timer.h>
#include <string.h>

#define VECTORS 32

static const char *const names[VECTORS] = {
    [1] = "gate-A",
    [2] = "gate-B",
    [13] = "timer1-overflow",
    [16] = "timer0-overflow",
    [18] = "byte-in"};
static uint64_t entered[VECTORS], worst[VECTORS], runs[VECTORS];
static uint16_t lowest_stack;
static FILE *truth;
static uint64_t edges;

static void note(struct avr_irq_t *irq, uint32_t value, void *param) {
  (void)irq;
  size_t vector = (size_t)param;
  if (value) {
    entered[vector] = avr->cycle;
    runs[vector]++;
  } else {
    uint64_t took = avr->cycle + 4 - entered[vector]; // and what the return itself takes
    worst[vector] = took > worst[vector] ? took : worst[vector];
  }
}

void measure_start(void) {
  lowest_stack = avr->ramend;
  for (int i = 0; i < avr->interrupts.vector_count; i++) {
    avr_int_vector_t *vector = avr->interrupts.vector[i];
    avr_irq_register_notify(vector->irq + AVR_INT_IRQ_RUNNING, note, (void *)(size_t)vector->vector);
  }
}

void measure_step(void) {
  uint16_t stack = (uint16_t)(avr->data[R_SPL] | avr->data[R_SPH] << 8);
  if (stack < lowest_stack && stack > 0x100) {
    lowest_stack = stack;
  }
}

void measure_truth(const char *path) {
  truth = fopen(path, "w");
  if (truth == NULL) {
    fail("%s can't be written.", path);
  }
}

void measure_edge(const struct event *event) {
  edges++;
  if (truth != NULL) {
    fprintf(truth, "%llu %c %c\n", (unsigned long long)event->at, event->who, event->value ? 'C' : 'B');
  }
}

// At which cycle the ticks of this boot began to count.
static uint64_t first_tick(void) {
  for (avr_io_t *part = avr->io_port; part != NULL; part = part->next) {
    if (strcmp(part->kind, "timer") == 0 && ((avr_timer_t *)part)->name == '1') {
      return ((avr_timer_t *)part)->tov_base % (65536 * 8);
    }
  }
  return 0;
}

void measure_print(const char *path) {
  if (truth != NULL) {
    fclose(truth);
  }
  FILE *out = path == NULL ? stderr : fopen(path, "w");
  if (out == NULL) {
    fail("%s can't be written.", path);
  }
  fprintf(out, "first-tick-cycle %llu\n", (unsigned long long)first_tick());
  fprintf(out, "edges %llu\n", (unsigned long long)edges);
  fprintf(out, "stack-bytes %d\n", avr->ramend - lowest_stack);
  fprintf(out, "eeprom-most-writes %u\n", eeprom_most_writes());
  for (int i = 0; i < VECTORS; i++) {
    if (names[i] != NULL) {
      fprintf(out, "%s-runs %llu\n%s-worst-cycles %llu\n", names[i], (unsigned long long)runs[i],
              names[i], (unsigned long long)worst[i]);
    }
  }
  if (path != NULL) {
    fclose(out);
  }
}

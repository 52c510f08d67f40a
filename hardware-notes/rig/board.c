#include "rig.h"

#include <simavr/avr_adc.h>
#include <simavr/avr_ioport.h>
#include <simavr/sim_elf.h>
#include <stdlib.h>
#include <string.h>
#include <time.h>

#define PACE (HZ / 1000)
#define PIND 0x29
#define OVERFLOWS 0x4A // GPIOR1
#define LOOP_FOR_EVER 0xCFFF // rjmp to itself

avr_t *avr;

static avr_irq_t *gate_pins[2], *key_pin;
static int gate_levels[2] = {1, 1}, key_level = 1;
static bool was_reset, waits, ended;
static void (*reset_of_kind)(avr_t *);

static void set_pins(void) {
  avr_raise_irq(gate_pins[0], (uint32_t)gate_levels[0]);
  avr_raise_irq(gate_pins[1], (uint32_t)gate_levels[1]);
  avr_raise_irq(key_pin, (uint32_t)key_level);
  // A level that the simulator has heard before it doesn't set again, though a reset has cleared it.
  avr->data[PIND] = (uint8_t)(gate_levels[0] << 2 | gate_levels[1] << 3 | key_level << 4);
}

static avr_irq_t *adc(int index) {
  return avr_io_getirq(avr, AVR_IOCTL_ADC_GETIRQ, index);
}

// What may be done amid the chip's work; false for what must wait until it is between two steps.
static bool done_at_once(const struct event *event) {
  switch (event->deed) {
    case EDGE:
      measure_edge(event);
      gate_levels[event->who - 'A'] = event->value;
      avr_raise_irq(gate_pins[event->who - 'A'], (uint32_t)event->value);
      return true;
    case KEY:
      key_level = event->value;
      avr_raise_irq(key_pin, (uint32_t)event->value);
      return true;
    case LIGHT: // counts of 1023 to millivolts, as the simulator has them
      avr_raise_irq(adc(ADC_IRQ_ADC0 + event->who - 'A'),
                    ((uint32_t)event->value * avr->avcc + 1022) / 1023);
      return true;
    case SUPPLY:
      avr->vcc = avr->avcc = (uint32_t)event->value;
      return true;
    case WARMTH:
      avr_raise_irq(adc(ADC_IRQ_TEMP), (uint32_t)event->value);
      return true;
    case SKIP: // the board's register of overflows, as if so many had been
      avr->data[OVERFLOWS] = (uint8_t)(avr->data[OVERFLOWS] + event->value);
      return true;
    case SAY:
      line_say(event->text, strlen(event->text));
      line_say("\n", 1);
      return true;
    default:
      return false;
  }
}

static avr_cycle_count_t on_time(avr_t *chip, avr_cycle_count_t when, void *param) {
  (void)param;
  (void)when;
  const struct event *event = script_next();
  while (event != NULL && event->at <= chip->cycle) {
    // The instruction amid which it happens is over; what is noted of it is to have its own time.
    avr_cycle_count_t now = chip->cycle;
    chip->cycle = event->at;
    bool done = done_at_once(event);
    chip->cycle = now;
    if (!done) {
      waits = true;
      return 0;
    }
    script_done();
    event = script_next();
  }
  return event == NULL ? 0 : event->at;
}

static void arm(void) {
  const struct event *event = script_next();
  if (event != NULL) {
    avr_cycle_timer_register(avr, event->at > avr->cycle ? event->at - avr->cycle : 0, on_time, NULL);
  }
}

static void note_reset(avr_t *chip) {
  was_reset = true;
  if (reset_of_kind != NULL) {
    reset_of_kind(chip);
  }
}

static void reset(char cause) {
  if (cause != 'E') {
    eeprom_cut();
    for (uint16_t i = 0x100; i <= avr->ramend; i++) {
      avr->data[i] = (uint8_t)random();
    }
  }
  avr_reset(avr);
  avr_regbit_set(avr, cause == 'P'   ? avr->reset_flags.porf
                      : cause == 'B' ? avr->reset_flags.borf
                                     : avr->reset_flags.extrf);
}

// In place of the firmware, a loop without interrupts: only the watchdog ends it.
static void hang(void) {
  uint32_t last = avr->flashend - 1;
  avr->flash[last] = LOOP_FOR_EVER & 0xFF;
  avr->flash[last + 1] = LOOP_FOR_EVER >> 8;
  avr->sreg[S_I] = 0;
  avr->interrupt_state = 0;
  avr->state = cpu_Running;
  avr->pc = last;
}

static void between_steps(void) {
  if (!waits) {
    return;
  }
  const struct event *event = script_next();
  waits = false;
  script_done();
  switch (event->deed) {
    case RESET:
      reset(event->who);
      break;
    case HANG:
      hang();
      break;
    case PLUG:
      cable_plug();
      break;
    case UNPLUG:
      cable_unplug();
      break;
    default:
      ended = true;
  }
  if (!was_reset) {
    arm();
  }
}

static void after_reset(void) {
  was_reset = false;
  mend_after_reset();
  eeprom_after_reset();
  line_after_reset();
  set_pins();
  arm();
}

static void keep_pace(void) {
  static struct timespec start;
  static uint64_t due;
  if (avr->cycle < due) {
    return;
  }
  if (due == 0) {
    clock_gettime(CLOCK_MONOTONIC, &start);
  }
  due = avr->cycle + PACE;
  uint64_t nanos = avr->cycle * 1000 / (HZ / 1000000) + (uint64_t)start.tv_nsec;
  struct timespec until = {start.tv_sec + (time_t)(nanos / 1000000000), (long)(nanos % 1000000000)};
  clock_nanosleep(CLOCK_MONOTONIC, TIMER_ABSTIME, &until, NULL);
  cable_poll();
}

void board_start(const char *elf) {
  elf_firmware_t firmware = {0};
  if (elf_read_firmware(elf, &firmware) != 0) {
    fail("%s is no firmware: build it with make first.", elf);
  }
  avr = avr_make_mcu_by_name("atmega328p");
  avr_init(avr);
  avr_load_firmware(avr, &firmware);
  avr->frequency = HZ;
  avr->vcc = avr->avcc = 5000;
  reset_of_kind = avr->reset;
  avr->reset = note_reset;
  for (int i = 0; i < 2; i++) {
    gate_pins[i] = avr_io_getirq(avr, AVR_IOCTL_IOPORT_GETIRQ('D'), 2 + i);
  }
  key_pin = avr_io_getirq(avr, AVR_IOCTL_IOPORT_GETIRQ('D'), 4);
  avr_raise_irq(adc(ADC_IRQ_TEMP), 314);
  mend_simulator();
  eeprom_watch();
  after_reset();
}

void board_run(void) {
  while (!ended) {
    measure_step();
    mend_asleep(avr->state == cpu_Sleeping);
    int state = avr_run(avr);
    if (state == cpu_Done || state == cpu_Crashed) {
      fail("the firmware stopped %.6f s after the start.", (double)avr->cycle / HZ);
    }
    if (was_reset) {
      after_reset();
    }
    between_steps();
    if (was_reset) {
      after_reset();
    }
    if (cable_wanted()) {
      keep_pace();
    }
  }
}

#include "rig.h"

#include <ctype.h>
#include <stdlib.h>
#include <string.h>

static struct event *events;
static size_t count, next;
static const char *file;
static int number;

static void wrong(const char *what) {
  fail("%s, line %d: %s.", file, number, what);
}

// Seconds, with up to nine digits after the point.
static uint64_t cycles(const char *word) {
  uint64_t seconds = 0, nanos = 0, unit = 100000000;
  const char *c = word;
  for (; isdigit((unsigned char)*c); c++) {
    seconds = seconds * 10 + (uint64_t)(*c - '0');
  }
  if (*c == '.') {
    for (c++; isdigit((unsigned char)*c); c++, unit /= 10) {
      nanos += (uint64_t)(*c - '0') * unit;
    }
  }
  if (*c != 0 || c == word) {
    wrong("a line begins with a time in seconds, such as 1.0025");
  }
  return seconds * HZ + (nanos * (HZ / 1000000) + 500) / 1000;
}

static int whole(const char *word) {
  char *end;
  long value = word == NULL ? 0 : strtol(word, &end, 10);
  if (word == NULL || *end != 0 || end == word) {
    wrong("a whole number is missing at the end");
  }
  return (int)value;
}

static bool is(const char *word, const char *other) {
  return word != NULL && strcmp(word, other) == 0;
}

static struct event understood(const char *time, const char *verb, const char *what, const char *rest) {
  struct event event = {.at = cycles(time)};
  if (is(verb, "A") || is(verb, "B")) {
    event.deed = EDGE;
    event.who = verb[0];
    event.value = is(what, "clear");
    if (!event.value && !is(what, "blocked")) {
      wrong("a gate is \"blocked\" or \"clear\"");
    }
  } else if (is(verb, "key")) {
    event.deed = KEY;
    event.value = is(what, "up");
    if (!event.value && !is(what, "down")) {
      wrong("the key is \"down\" or \"up\"");
    }
  } else if (is(verb, "light") && (is(what, "A") || is(what, "B"))) {
    event.deed = LIGHT;
    event.who = what[0];
    event.value = whole(rest);
  } else if (is(verb, "supply")) {
    event.deed = SUPPLY;
    event.value = whole(what);
  } else if (is(verb, "warmth")) {
    event.deed = WARMTH;
    event.value = whole(what);
  } else if (is(verb, "skip")) {
    event.deed = SKIP;
    event.value = whole(what);
  } else if (is(verb, "reset")) {
    event.deed = RESET;
    event.who = is(what, "power") ? 'P' : is(what, "pin") ? 'E' : is(what, "brown-out") ? 'B' : 0;
    if (event.who == 0) {
      wrong("a reset is by \"power\", \"pin\" or \"brown-out\"");
    }
  } else if (is(verb, "hang")) {
    event.deed = HANG;
  } else if (is(verb, "unplug")) {
    event.deed = UNPLUG;
  } else if (is(verb, "plug")) {
    event.deed = PLUG;
  } else if (is(verb, "say") && what != NULL) {
    event.deed = SAY;
    event.text = strdup(what);
  } else if (is(verb, "end")) {
    event.deed = END;
  } else {
    wrong("it says none of A, B, key, light, supply, warmth, skip, reset, hang, unplug, plug, say, "
          "end");
  }
  return event;
}

void script_read(const char *path) {
  FILE *in = strcmp(path, "-") == 0 ? stdin : fopen(path, "r");
  char line[256];
  size_t room = 0;
  file = path;
  if (in == NULL) {
    fail("%s can't be read: name a script.", path);
  }
  while (fgets(line, sizeof line, in) != NULL) {
    number++;
    line[strcspn(line, "#\r\n")] = 0;
    char *time = strtok(line, " \t");
    if (time == NULL) {
      continue;
    }
    char *verb = strtok(NULL, " \t");
    char *what = strtok(NULL, " \t");
    char *rest = strtok(NULL, " \t");
    if (count == room) {
      room = room == 0 ? 1024 : 2 * room;
      events = realloc(events, room * sizeof *events);
    }
    events[count] = understood(time, verb, what, rest);
    if (count > 0 && events[count].at < events[count - 1].at) {
      wrong("it is earlier than the line before; put them in order");
    }
    count++;
  }
  if (count == 0 || events[count - 1].deed != END) {
    wrong("the script doesn't say when to \"end\"");
  }
}

const struct event *script_next(void) {
  return next < count ? &events[next] : NULL;
}

void script_done(void) {
  next++;
}

#include "rig.h"

#include <errno.h>
#include <fcntl.h>
#include <poll.h>
#include <stdlib.h>
#include <termios.h>
#include <unistd.h>

static const char *path;
static int board = -1;

bool cable_wanted(void) {
  return path != NULL;
}

void cable_plug(void) {
  if (board >= 0) {
    return;
  }
  board = posix_openpt(O_RDWR | O_NOCTTY | O_NONBLOCK);
  if (board < 0 || grantpt(board) != 0 || unlockpt(board) != 0) {
    fail("this computer gives no pseudo-terminal.");
  }
  const char *port = ptsname(board);
  int host = open(port, O_RDWR | O_NOCTTY);
  struct termios raw;
  tcgetattr(host, &raw);
  cfmakeraw(&raw);
  tcsetattr(host, TCSANOW, &raw);
  close(host); // from now on POLLHUP tells whether anybody listens
  unlink(path);
  if (symlink(port, path) != 0) {
    fail("the link %s can't be made.", path);
  }
}

void cable_unplug(void) {
  if (board >= 0) {
    unlink(path);
    close(board);
    board = -1;
  }
}

void cable_start(const char *link) {
  path = link;
  cable_plug();
}

static short state(void) {
  struct pollfd it = {board, POLLIN, 0};
  return board >= 0 && poll(&it, 1, 0) >= 0 ? it.revents : POLLHUP;
}

// A wire to nobody takes every byte, and so does one to somebody who doesn't read.
void cable_byte(uint8_t byte) {
  if (!(state() & POLLHUP) && write(board, &byte, 1) < 0 && errno != EAGAIN && errno != EIO) {
    fail("the pseudo-terminal takes nothing.");
  }
}

void cable_poll(void) {
  char bytes[256];
  if (state() & POLLIN) {
    ssize_t count = read(board, bytes, sizeof bytes);
    if (count > 0) {
      line_say(bytes, (size_t)count);
    }
  }
}

void cable_drain(void) {
  struct pollfd it = {board, 0, 0};
  if (board >= 0 && !(state() & POLLHUP)) {
    tcdrain(board);
    poll(&it, 1, 200);
  }
  cable_unplug();
}

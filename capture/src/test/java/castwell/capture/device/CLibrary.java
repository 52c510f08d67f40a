package castwell.capture.device;

import com.sun.jna.Library;
import com.sun.jna.Native;

/** The calls of the C library that Java lacks. */
interface CLibrary extends Library {
  CLibrary C = Native.load("c", CLibrary.class);

  int posix_openpt(int flags);

  int grantpt(int fd);

  int unlockpt(int fd);

  int ptsname_r(int fd, byte[] name, long size);

  int open(String path, int flags);

  int tcgetattr(int fd, byte[] termios);

  void cfmakeraw(byte[] termios);

  int tcsetattr(int fd, int when, byte[] termios);

  int poll(byte[] pollfd, long count, int timeoutMillis);

  long read(int fd, byte[] bytes, long size);

  long write(int fd, byte[] bytes, long size);

  int close(int fd);
}

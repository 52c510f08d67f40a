/*
 * A disk that loses its power: a file system (FUSE 3) in memory, on which only what was synced is
 * sure to stay. After a given number of changes, or when told to (SIGUSR1), the power is cut, and
 * every further change fails. When it is told to end (SIGTERM), what the disk holds after the cut is
 * written to a folder of its own.
 *
 * Of what wasn't synced by fsync, any part may be there: sectors of a write each for itself, in any
 * order, even torn within; what a file grew by without its content, as zeros or as garbage. The
 * names in a folder are kept in order, as a journal does, and are only sure when the folder itself
 * was synced. That is as much as POSIX lets a file system lose, and more than most do.
 *
 *     lossy-disk BEFORE AFTER MOUNT SEED LAST
 *
 * BEFORE is what it holds at first, LAST the number of changes after which the power is cut
 * (0: when told).
 */
#define FUSE_USE_VERSION 31
#define _GNU_SOURCE
#include <errno.h>
#include <fcntl.h>
#include <ftw.h>
#include <fuse3/fuse.h>
#include <signal.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/statvfs.h>

enum { SECTOR = 512, NAMES = 1024 };

struct bytes { char *at; size_t size; };
/* A write; or, without bytes, the file's end moved to `offset`. */
struct piece { size_t offset; struct bytes bytes; struct piece *next; };
struct node { ino_t number; mode_t mode; struct bytes now, synced; struct piece *first, **end; };
/* A path gets a node, another goes: in one stroke where both are said. */
struct naming { char *path; struct node *node; char *gone; struct naming *next; };
struct names { int count; struct { char *path; struct node *node; } of[NAMES]; };

static struct names now, synced;
static struct naming *first_naming, **naming_end = &first_naming;
static const char *before, *after;
static unsigned long changes, last, lost;
static volatile sig_atomic_t dark;
static struct fuse *disk;

static int chance(double p) { return drand48() < p; }

/* How much of what wasn't synced stays. */
static double some_share(void) { return chance(0.3) ? 0 : chance(0.3) ? 1 : drand48(); }

static void fail(const char *what) {
  perror(what);
  exit(1);
}

static void *checked(void *memory) {
  if (!memory) fail("lossy-disk");
  return memory;
}

/* Counts a change; 0 when there is no power for it. */
static int powered(void) {
  if (dark || (last > 0 && changes >= last)) return 0;
  changes++;
  return 1;
}

static void resize(struct bytes *bytes, size_t size) {
  bytes->at = checked(realloc(bytes->at, size + 1));
  if (size > bytes->size) memset(bytes->at + bytes->size, 0, size - bytes->size);
  bytes->size = size;
}

static void put(struct bytes *bytes, size_t offset, const char *from, size_t size) {
  if (offset + size > bytes->size) resize(bytes, offset + size);
  if (size) memcpy(bytes->at + offset, from, size);
}

/* ---- names */

static struct node *make(mode_t mode) {
  static ino_t number = 1;
  struct node *node = checked(calloc(1, sizeof *node));
  node->number = ++number;
  node->mode = mode;
  node->end = &node->first;
  return node;
}

static int place(const struct names *names, const char *path) {
  for (int i = 0; i < names->count; i++) if (!strcmp(names->of[i].path, path)) return i;
  return -1;
}

static struct node *find(const char *path, struct fuse_file_info *open) {
  if (open) return (struct node *)open->fh;
  int at = place(&now, path);
  return at < 0 ? NULL : now.of[at].node;
}

static void apply(struct names *names, const struct naming *naming) {
  int gone = naming->gone ? place(names, naming->gone) : -1;
  if (gone >= 0) names->of[gone] = names->of[--names->count];
  if (!naming->path) return;
  int at = place(names, naming->path);
  if (at < 0 && (at = names->count++) == NAMES) fail("too many files");
  names->of[at].path = naming->path;
  names->of[at].node = naming->node;
}

static void name(const char *path, struct node *node, const char *gone) {
  struct naming *naming = checked(calloc(1, sizeof *naming));
  naming->path = path ? checked(strdup(path)) : NULL;
  naming->node = node;
  naming->gone = gone ? checked(strdup(gone)) : NULL;
  apply(&now, naming);
  *naming_end = naming;
  naming_end = &naming->next;
}

static void keep_names(int count) {
  for (; count > 0 && first_naming; count--) {
    apply(&synced, first_naming);
    first_naming = first_naming->next;
  }
  if (!first_naming) naming_end = &first_naming;
}

static int is_in(const char *folder, const char *path) {
  const char *slash = path ? strrchr(path, '/') : NULL;
  size_t length = slash ? (size_t)(slash - path) : 0;
  if (slash && length == 0) return !strcmp(folder, "/");
  return slash && strlen(folder) == length && !strncmp(folder, path, length);
}

/* ---- contents */

static void change(struct node *node, size_t offset, const char *from, size_t size) {
  struct piece *piece = checked(calloc(1, sizeof *piece));
  piece->offset = offset;
  if (from) {
    put(&piece->bytes, 0, from, size);
    put(&node->now, offset, from, size);
  } else {
    resize(&node->now, offset);
  }
  *node->end = piece;
  node->end = &piece->next;
}

static void keep_all(struct node *node) {
  resize(&node->synced, node->now.size);
  put(&node->synced, 0, node->now.at, node->now.size);
  for (struct piece *piece = node->first, *next; piece; piece = next) {
    next = piece->next;
    free(piece->bytes.at);
    free(piece);
  }
  node->first = NULL;
  node->end = &node->first;
}

/* ---- what a program asks */

static int disk_getattr(const char *path, struct stat *stat, struct fuse_file_info *open) {
  *stat = (struct stat){.st_ino = 1, .st_mode = S_IFDIR | 0755, .st_nlink = 1};
  if (path && !strcmp(path, "/")) return 0;
  struct node *node = find(path, open);
  if (!node) return -ENOENT;
  stat->st_ino = node->number;
  stat->st_mode = node->mode;
  stat->st_size = node->now.size;
  stat->st_blocks = (node->now.size + 511) / 512;
  return 0;
}

static int disk_opendir(const char *path, struct fuse_file_info *open) {
  open->fh = (uint64_t)checked(strdup(path));
  return 0;
}

static int disk_releasedir(const char *path, struct fuse_file_info *open) {
  (void)path;
  free((char *)open->fh);
  return 0;
}

static int disk_readdir(const char *path, void *buffer, fuse_fill_dir_t fill, off_t offset,
    struct fuse_file_info *open, enum fuse_readdir_flags flags) {
  (void)path, (void)offset, (void)flags;
  for (int i = 0; i < now.count; i++)
    if (is_in((char *)open->fh, now.of[i].path)) fill(buffer, strrchr(now.of[i].path, '/') + 1, NULL, 0, 0);
  return 0;
}

static int disk_truncate(const char *path, off_t size, struct fuse_file_info *open) {
  if (!powered()) return -EIO;
  change(find(path, open), size, NULL, 0);
  return 0;
}

static int disk_open(const char *path, struct fuse_file_info *open) {
  open->fh = (uint64_t)find(path, NULL);
  open->keep_cache = 1; /* nobody writes here but through the kernel */
  return open->flags & O_TRUNC ? disk_truncate(path, 0, open) : 0;
}

static int disk_create(const char *path, mode_t mode, struct fuse_file_info *open) {
  if (!powered()) return -EIO;
  struct node *node = make(S_IFREG | (mode & 0777));
  name(path, node, NULL);
  open->fh = (uint64_t)node;
  return 0;
}

static int disk_mkdir(const char *path, mode_t mode) {
  if (!powered()) return -EIO;
  name(path, make(S_IFDIR | (mode & 0777)), NULL);
  return 0;
}

static int disk_unlink(const char *path) {
  if (!powered()) return -EIO;
  name(NULL, NULL, path);
  return 0;
}

static int disk_rmdir(const char *path) {
  for (int i = 0; i < now.count; i++) if (is_in(path, now.of[i].path)) return -ENOTEMPTY;
  return disk_unlink(path);
}

static int disk_rename(const char *from, const char *to, unsigned int flags) {
  struct node *node = find(from, NULL);
  if (flags || S_ISDIR(node->mode)) return -EINVAL; /* nobody needs these */
  if (!powered()) return -EIO;
  name(to, node, from);
  return 0;
}

static int disk_read(const char *path, char *to, size_t size, off_t offset,
    struct fuse_file_info *open) {
  struct node *node = find(path, open);
  size_t there = (size_t)offset < node->now.size ? node->now.size - offset : 0;
  size_t read = size < there ? size : there;
  if (read) memcpy(to, node->now.at + offset, read);
  return read;
}

static int disk_write(const char *path, const char *from, size_t size, off_t offset,
    struct fuse_file_info *open) {
  if (!powered()) return -EIO;
  change(find(path, open), offset, from, size);
  return size;
}

static int disk_fsync(const char *path, int data_alone, struct fuse_file_info *open) {
  (void)data_alone;
  if (!powered()) return -EIO;
  keep_all(find(path, open));
  return 0;
}

/* A journal keeps its order: what came before the last change of this folder is there too. */
static int disk_fsyncdir(const char *path, int data_alone, struct fuse_file_info *open) {
  (void)path, (void)data_alone;
  if (!powered()) return -EIO;
  const char *folder = (char *)open->fh;
  int count = 0, at = 0;
  for (struct naming *naming = first_naming; naming; naming = naming->next) {
    at++;
    if (is_in(folder, naming->path) || is_in(folder, naming->gone)) count = at;
  }
  keep_names(count);
  return 0;
}

static int disk_chmod(const char *path, mode_t mode, struct fuse_file_info *open) {
  struct node *node = find(path, open);
  node->mode = (node->mode & S_IFMT) | (mode & 07777);
  return 0;
}

static int disk_utimens(const char *path, const struct timespec at[2], struct fuse_file_info *open) {
  (void)path, (void)at, (void)open;
  return 0;
}

static int disk_statfs(const char *path, struct statvfs *stat) {
  (void)path;
  *stat = (struct statvfs){.f_bsize = 4096, .f_frsize = 4096, .f_blocks = 1 << 20,
      .f_bfree = 1 << 20, .f_bavail = 1 << 20, .f_namemax = 255};
  return 0;
}

/* ---- the power is cut */

static void grow(struct bytes *kept, size_t size, int garbage) {
  size_t from = kept->size;
  if (size <= from) return;
  resize(kept, size);
  for (size_t i = from; garbage && i < size; i++) kept->at[i] = mrand48();
}

static void keep_some(struct bytes *kept, const struct piece *piece, double share, int garbage) {
  for (size_t from = 0, size; from < piece->bytes.size; from += size) {
    size_t sector = SECTOR - (piece->offset + from) % SECTOR;
    size = piece->bytes.size - from < sector ? piece->bytes.size - from : sector;
    if (!chance(share)) {
      lost++;
      continue;
    }
    size_t part = share < 1 && chance(0.1) ? drand48() * size : size; /* torn */
    grow(kept, piece->offset + from, garbage);
    put(kept, piece->offset + from, piece->bytes.at + from, part);
  }
}

static void cut_file(struct node *node) {
  double share = some_share();
  int garbage = chance(0.5);
  for (struct piece *piece = node->first; piece; piece = piece->next) {
    if (piece->bytes.at) keep_some(&node->synced, piece, share, garbage);
    else if (!chance(share)) lost++;
    else if (piece->offset < node->synced.size) resize(&node->synced, piece->offset);
    else grow(&node->synced, piece->offset, garbage);
  }
  if (share > 0 && chance(0.2)) grow(&node->synced, node->now.size, garbage);
}

static void save(const char *path, const struct node *node) {
  char to[4096];
  snprintf(to, sizeof to, "%s%s", after, path);
  if (S_ISDIR(node->mode)) {
    if (mkdir(to, 0755)) fail(to);
    return;
  }
  FILE *file = fopen(to, "w");
  if (!file || fwrite(node->synced.at, 1, node->synced.size, file) != node->synced.size
      || fclose(file)) fail(to);
}

static int by_path(const void *a, const void *b) {
  return strcmp(*(char *const *)a, *(char *const *)b);
}

static void cut(void *unused) {
  (void)unused;
  double share = some_share();
  while (first_naming && chance(share)) keep_names(1);
  for (; first_naming; first_naming = first_naming->next) lost++;
  qsort(synced.of, synced.count, sizeof synced.of[0], by_path); /* folders before what is in them */
  for (int i = 0; i < synced.count; i++) {
    cut_file(synced.of[i].node);
    save(synced.of[i].path, synced.of[i].node);
  }
  printf("%lu changes, %lu lost\n", changes, lost);
  fflush(stdout);
}

/* ---- the power is there */

static void told(int signal) {
  dark = 1;
  if (signal == SIGTERM) fuse_exit(disk);
}

static void *started(struct fuse_conn_info *connection, struct fuse_config *config) {
  (void)connection;
  disk = fuse_get_context()->fuse;
  sigaction(SIGUSR1, &(struct sigaction){.sa_handler = told}, NULL);
  /* The library's own handler goes before the disk is saved. */
  sigaction(SIGTERM, &(struct sigaction){.sa_handler = told}, NULL);
  config->use_ino = 1;
  config->nullpath_ok = 1; /* what is open knows itself, whatever its name */
  config->hard_remove = 1;
  puts("mounted");
  fflush(stdout);
  return NULL;
}

static int load(const char *path, const struct stat *stat, int kind, struct FTW *at) {
  if (at->level == 0) return 0;
  struct node *node = make(stat->st_mode);
  if (kind == FTW_F) {
    FILE *file = checked(fopen(path, "r"));
    resize(&node->now, stat->st_size);
    if (fread(node->now.at, 1, node->now.size, file) != node->now.size) fail(path);
    fclose(file);
    keep_all(node);
  }
  name(path + strlen(before), node, NULL);
  keep_names(1);
  return 0;
}

static const struct fuse_operations operations = {
  .init = started, .destroy = cut, .getattr = disk_getattr, .opendir = disk_opendir,
  .readdir = disk_readdir, .releasedir = disk_releasedir,
  .open = disk_open, .create = disk_create, .mkdir = disk_mkdir, .unlink = disk_unlink,
  .rmdir = disk_rmdir, .rename = disk_rename, .read = disk_read, .write = disk_write,
  .truncate = disk_truncate, .fsync = disk_fsync, .fsyncdir = disk_fsyncdir,
  .chmod = disk_chmod, .utimens = disk_utimens, .statfs = disk_statfs,
};

int main(int count, char *arguments[]) {
  if (count != 6) {
    fputs("lossy-disk BEFORE AFTER MOUNT SEED LAST\n", stderr);
    return 2;
  }
  before = arguments[1];
  after = arguments[2];
  srand48(atol(arguments[4]));
  last = strtoul(arguments[5], NULL, 10);
  if (nftw(before, load, 16, FTW_PHYS)) fail(before);
  char *options[] = {arguments[0], "-f", "-s", "-o", "fsname=lossy-disk", arguments[3], NULL};
  return fuse_main(6, options, &operations, NULL);
}

/*
 * Preloaded into the server: a disk that refuses. While the file FAILING_DISK_SAYS holds "write 28",
 * writes to files in FAILING_DISK_DATA fail with that errno (28 full, 30 read-only); while it holds
 * "sync 5", syncing them does (5 failing). While it is empty or absent, nothing is refused.
 */
#define _GNU_SOURCE
#include <errno.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/syscall.h>
#include <unistd.h>

static int refused(int file, const char *what) {
  const char *data = getenv("FAILING_DISK_DATA"), *says = getenv("FAILING_DISK_SAYS");
  char proc_path[40], path[4200], word[20];
  int number = 0;
  FILE *order = data && says ? fopen(says, "re") : NULL;
  if (!order) return 0;
  int read = fscanf(order, "%19s %d", word, &number);
  fclose(order);
  if (read != 2 || strcmp(word, what)) return 0;
  sprintf(proc_path, "/proc/self/fd/%d", file);
  ssize_t n = readlink(proc_path, path, sizeof path - 1);
  if (n < 0) return 0;
  path[n] = 0;
  if (strncmp(path, data, strlen(data)) || path[strlen(data)] != '/') return 0;
  errno = number;
  return 1;
}

ssize_t pwrite64(int file, const void *bytes, size_t n, off64_t at) {
  return refused(file, "write") ? -1 : syscall(SYS_pwrite64, file, bytes, n, at);
}
ssize_t pwrite(int, const void *, size_t, off_t) __attribute__((alias("pwrite64")));
int fsync(int file) { return refused(file, "sync") ? -1 : syscall(SYS_fsync, file); }
int fdatasync(int file) { return refused(file, "sync") ? -1 : syscall(SYS_fdatasync, file); }

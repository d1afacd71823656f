/*
 * Preloaded into the server: a disk that keeps only what was synced. fsync and fdatasync of a file in
 * SYNCED_ONLY_DATA copy what it holds at that moment to SYNCED_ONLY_KEEP, under a key that outlives a
 * rename and is not shared with a later file in the same inode. A name is kept only by an fsync of its
 * folder, as POSIX has it. The copy is written over the last one, so that a kill in the middle leaves a
 * torn sync and not less than was there. The real sync is left out: a kill does not touch the page
 * cache, only the copies count. SQLite syncs by fsync, fdatasync and an fsync of the folder, and by
 * nothing else (no O_SYNC, no msync, no sync_file_range): the test that must lose entries checks it.
 */
#define _GNU_SOURCE
#include <dirent.h>
#include <fcntl.h>
#include <pthread.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <sys/syscall.h>
#include <unistd.h>

static pthread_mutex_t one_at_a_time = PTHREAD_MUTEX_INITIALIZER;

static int key_of(int folder, const char *name, char *key) {
  struct statx file;
  if (statx(folder, name, AT_EMPTY_PATH, STATX_BASIC_STATS | STATX_BTIME, &file)) return -1;
  return sprintf(key, "%llu-%lld%09u", (unsigned long long)file.stx_ino,
                 (long long)file.stx_btime.tv_sec, file.stx_btime.tv_nsec);
}

static int keep_bytes(int file, const char *proc_path, const char *keep) {
  static char buffer[1 << 20];
  char key[64], path[4200];
  if (key_of(file, "", key) < 0) return -1;
  sprintf(path, "%s/%s", keep, key);
  int copy = open(path, O_WRONLY | O_CREAT | O_CLOEXEC, 0600);
  /* Closing a second descriptor would drop SQLite's locks: only a file that cannot be read is reopened. */
  int write_only = (fcntl(file, F_GETFL) & O_ACCMODE) == O_WRONLY;
  int source = write_only ? open(proc_path, O_RDONLY | O_CLOEXEC) : file;
  off_t at = 0;
  ssize_t n;
  while ((n = pread(source, buffer, sizeof buffer, at)) > 0 && pwrite(copy, buffer, n, at) == n) at += n;
  int failed = n != 0 || ftruncate(copy, at);
  if (write_only) close(source);
  close(copy);
  return failed ? -1 : 0;
}

static int keep_names(const char *data, const char *keep) {
  char key[64], path[4200], whole[4200];
  sprintf(path, "%s/names.part", keep);
  sprintf(whole, "%s/names", keep);
  DIR *folder = opendir(data);
  FILE *names = fopen(path, "w");
  if (!folder || !names) return -1;
  for (struct dirent *it; (it = readdir(folder));)
    if (it->d_type == DT_REG && key_of(dirfd(folder), it->d_name, key) > 0)
      fprintf(names, "%s %s\n", key, it->d_name);
  closedir(folder);
  return fclose(names) || rename(path, whole) ? -1 : 0;
}

static int keep(int file, int otherwise) {
  const char *data = getenv("SYNCED_ONLY_DATA"), *keep = getenv("SYNCED_ONLY_KEEP");
  char proc_path[40], path[4200];
  sprintf(proc_path, "/proc/self/fd/%d", file);
  ssize_t n = readlink(proc_path, path, sizeof path - 1);
  if (!data || !keep || n < 0) return syscall(otherwise, file);
  path[n] = 0;
  int is_folder = strcmp(path, data) == 0;
  if (!is_folder && (strncmp(path, data, strlen(data)) || path[strlen(data)] != '/'))
    return syscall(otherwise, file);
  pthread_mutex_lock(&one_at_a_time);
  int result = is_folder ? keep_names(data, keep) : keep_bytes(file, proc_path, keep);
  pthread_mutex_unlock(&one_at_a_time);
  return result;
}

int fsync(int file) { return keep(file, SYS_fsync); }
int fdatasync(int file) { return keep(file, SYS_fdatasync); }

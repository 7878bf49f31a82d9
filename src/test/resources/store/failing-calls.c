/*
 * Loaded before the C library: makes one call of those that put a workspace on the disk fail. Which one, counted from 1,
 * is said by trying to open "/failing-call/N", which also starts the count again; 0 stands for none. Trying to open
 * "/failing-call/?" fails with EACCES where one has failed since, and with ENOENT where none has.
 */
#define _GNU_SOURCE
#include <dlfcn.h>
#include <errno.h>
#include <fcntl.h>
#include <stdarg.h>
#include <stdlib.h>
#include <string.h>
#include <sys/types.h>
#include <unistd.h>

#define MOST_FILES 4096
static const char CONTROL[] = "/failing-call/";
static const char MARK[] = "/faulty-disk/";
static char watched[MOST_FILES];
static long wanted;
static long calls;
static int failed;

static int fails(void) {
    if (wanted > 0 && ++calls == wanted) {
        failed = 1;
        errno = EIO;
        return 1;
    }
    return 0;
}

static int watches(int fd) { return fd >= 0 && fd < MOST_FILES && watched[fd]; }

static int control(const char *path) {
    if (strncmp(path, CONTROL, sizeof CONTROL - 1) != 0) return 0;
    const char *word = path + sizeof CONTROL - 1;
    if (*word == '?') {
        errno = failed ? EACCES : ENOENT;
    } else {
        wanted = atol(word);
        calls = 0;
        failed = 0;
        errno = ENOENT;
    }
    return 1;
}

static int opened(const char *name, const char *path, int flags, mode_t mode) {
    int (*real)(const char *, int, ...) = dlsym(RTLD_NEXT, name);
    if (control(path)) return -1;
    int on_disk = strstr(path, MARK) != NULL;
    if (on_disk && fails()) return -1;
    int fd = real(path, flags, mode);
    if (fd >= 0 && fd < MOST_FILES) watched[fd] = (char) on_disk;
    return fd;
}

int open(const char *path, int flags, ...) {
    va_list rest;
    va_start(rest, flags);
    mode_t mode = va_arg(rest, mode_t);
    va_end(rest);
    return opened("open", path, flags, mode);
}

int open64(const char *path, int flags, ...) {
    va_list rest;
    va_start(rest, flags);
    mode_t mode = va_arg(rest, mode_t);
    va_end(rest);
    return opened("open64", path, flags, mode);
}

ssize_t write(int fd, const void *bytes, size_t count) {
    ssize_t (*real)(int, const void *, size_t) = dlsym(RTLD_NEXT, "write");
    return watches(fd) && fails() ? -1 : real(fd, bytes, count);
}

ssize_t pwrite(int fd, const void *bytes, size_t count, off_t at) {
    ssize_t (*real)(int, const void *, size_t, off_t) = dlsym(RTLD_NEXT, "pwrite");
    return watches(fd) && fails() ? -1 : real(fd, bytes, count, at);
}

ssize_t pwrite64(int fd, const void *bytes, size_t count, off64_t at) {
    ssize_t (*real)(int, const void *, size_t, off64_t) = dlsym(RTLD_NEXT, "pwrite64");
    return watches(fd) && fails() ? -1 : real(fd, bytes, count, at);
}

int fsync(int fd) {
    int (*real)(int) = dlsym(RTLD_NEXT, "fsync");
    return watches(fd) && fails() ? -1 : real(fd);
}

int fdatasync(int fd) {
    int (*real)(int) = dlsym(RTLD_NEXT, "fdatasync");
    return watches(fd) && fails() ? -1 : real(fd);
}

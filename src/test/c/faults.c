/*
 * Stands between a program and one folder, loaded before it with LD_PRELOAD. It writes down every change of the folder in
 * the order in which it is made, and lets chosen calls fail. FAULTS_FOLDER names the folder, FAULTS_TRACE the file that the
 * changes are written to, FAULTS_CONTROL a file of at least 4096 bytes through which the program itself says what is to
 * fail: the struct below, in the machine's byte order. One thread at a time may work in the folder.
 */
#define _GNU_SOURCE
#include <dlfcn.h>
#include <errno.h>
#include <fcntl.h>
#include <stdarg.h>
#include <stdint.h>
#include <stdlib.h>
#include <string.h>
#include <sys/mman.h>
#include <sys/stat.h>
#include <sys/syscall.h>
#include <time.h>
#include <unistd.h>

enum kind { OPEN, READ, WRITE, SYNC, CUT, REMOVE, NAME, LOCK, MAP, KINDS };

struct control {
    int32_t recording;   /* 1: changes are written to the trace */
    int32_t kind;        /* which calls are counted down; -1 none */
    int32_t countdown;   /* the call that fails: 1 is the next one */
    int32_t error;       /* its errno; 0: only half of a write is done */
    int32_t sticky;      /* 1: all calls of the kind fail from then on */
    int32_t fired;       /* how many failed */
    int32_t delay_ms;    /* every forced write takes so much longer */
    int32_t unused;
    int32_t calls[KINDS]; /* how many there were of each kind */
};

static struct control *control;
static const char *folder;
static size_t folder_length;
static int trace = -1;
static char *names[65536];

static void set_up(void) __attribute__((constructor));

static void set_up(void) {
    const char *where = getenv("FAULTS_CONTROL");
    folder = getenv("FAULTS_FOLDER");
    const char *to = getenv("FAULTS_TRACE");
    if (!where || !folder || !to) {
        return;
    }
    folder_length = strlen(folder);
    int fd = (int) syscall(SYS_openat, AT_FDCWD, where, O_RDWR | O_CLOEXEC, 0);
    void *shared = fd < 0 ? MAP_FAILED : (void *) syscall(SYS_mmap, 0, 4096, PROT_READ | PROT_WRITE, MAP_SHARED, fd, 0);
    trace = (int) syscall(SYS_openat, AT_FDCWD, to, O_WRONLY | O_CREAT | O_APPEND | O_CLOEXEC, 0600);
    if (shared != MAP_FAILED && trace >= 0) {
        control = shared;
    }
}

static int watched_path(const char *path) {
    return control && path && strncmp(path, folder, folder_length) == 0 && path[folder_length] == '/';
}

static const char *watched(int fd) {
    return control && fd >= 0 && fd < 65536 ? names[fd] : NULL;
}

/* Whether this call is to fail; errno is set then. Half a write is 2. */
static int fails(enum kind kind) {
    control->calls[kind]++;
    if (control->kind != (int) kind || (control->countdown <= 0 && !(control->sticky && control->fired))) {
        return 0;
    }
    if (control->countdown > 0 && --control->countdown > 0) {
        return 0;
    }
    control->fired++;
    if (control->error == 0) {
        return 2;
    }
    errno = control->error;
    return 1;
}

static void put(const void *bytes, size_t length) {
    const char *from = bytes;
    while (length > 0) {
        ssize_t done = syscall(SYS_write, trace, from, length);
        if (done <= 0) {
            abort();
        }
        from += done;
        length -= (size_t) done;
    }
}

/* A change: what it is, two paths or none, the file's number, a place and bytes. */
static void note(char what, const char *path, const char *other, uint64_t number, int64_t at, const void *bytes, int32_t n) {
    if (!control->recording) {
        return;
    }
    int kept = errno;
    uint16_t one = path ? (uint16_t) strlen(path) : 0;
    uint16_t two = other ? (uint16_t) strlen(other) : 0;
    put(&what, 1);
    put(&one, 2);
    put(path, one);
    put(&two, 2);
    put(other, two);
    put(&number, 8);
    put(&at, 8);
    put(&n, 4);
    put(bytes, (size_t) n);
    errno = kept;
}

static uint64_t number_of(int fd, int *is_folder) {
    struct stat about;
    if (fstat(fd, &about) != 0) {
        return 0;
    }
    if (is_folder) {
        *is_folder = S_ISDIR(about.st_mode);
    }
    return (uint64_t) about.st_ino;
}

/* A number that the system gives anew: closedir(3) closed it for the file before without our close. */
static void forget(int fd) {
    if (fd >= 0 && fd < 65536 && names[fd]) {
        free(names[fd]);
        names[fd] = NULL;
    }
}

static int opened(const char *path, int flags, mode_t mode) {
    if (!watched_path(path)) {
        int other = (int) syscall(SYS_openat, AT_FDCWD, path, flags, mode);
        forget(other);
        return other;
    }
    if (fails(OPEN)) {
        if (control->error == 0) {
            errno = EIO;
        }
        return -1;
    }
    struct stat before;
    int was = stat(path, &before) == 0;
    int fd = (int) syscall(SYS_openat, AT_FDCWD, path, flags, mode);
    forget(fd);
    if (fd >= 0 && fd < 65536) {
        names[fd] = strdup(path);
        uint64_t number = number_of(fd, NULL);
        if (!was) {
            note('C', path, NULL, number, 0, NULL, 0);
        } else if (flags & O_TRUNC) {
            note('Z', path, NULL, number, 0, NULL, 0);
        }
    }
    return fd;
}

int open(const char *path, int flags, ...) {
    va_list rest;
    va_start(rest, flags);
    mode_t mode = flags & (O_CREAT | O_TMPFILE) ? va_arg(rest, mode_t) : 0;
    va_end(rest);
    return opened(path, flags, mode);
}

int open64(const char *path, int flags, ...) {
    va_list rest;
    va_start(rest, flags);
    mode_t mode = flags & (O_CREAT | O_TMPFILE) ? va_arg(rest, mode_t) : 0;
    va_end(rest);
    return opened(path, flags | O_LARGEFILE, mode);
}

int close(int fd) {
    forget(fd);
    return (int) syscall(SYS_close, fd);
}

ssize_t read(int fd, void *to, size_t n) {
    return watched(fd) && fails(READ) ? -1 : syscall(SYS_read, fd, to, n);
}

ssize_t pread64(int fd, void *to, size_t n, off64_t at) {
    return watched(fd) && fails(READ) ? -1 : syscall(SYS_pread64, fd, to, n, at);
}

static ssize_t written(int fd, const void *from, size_t n, off64_t at, int here) {
    const char *name = watched(fd);
    int failed = name ? fails(WRITE) : 0;
    if (failed == 1) {
        return -1;
    }
    if (name && here) {
        at = syscall(SYS_lseek, fd, 0, SEEK_CUR);
    }
    size_t some = failed && n > 1 ? n / 2 : n;
    ssize_t done = here ? syscall(SYS_write, fd, from, some) : syscall(SYS_pwrite64, fd, from, some, at);
    if (name && done > 0) {
        note('W', name, NULL, number_of(fd, NULL), at, from, (int32_t) done);
    }
    return done;
}

ssize_t write(int fd, const void *from, size_t n) {
    return written(fd, from, n, 0, 1);
}

ssize_t pwrite64(int fd, const void *from, size_t n, off64_t at) {
    return written(fd, from, n, at, 0);
}

static int forced(int fd, long call) {
    const char *name = watched(fd);
    if (!name) {
        return (int) syscall(call, fd);
    }
    int is_folder = 0;
    uint64_t number = number_of(fd, &is_folder);
    if (control->delay_ms > 0) {
        struct timespec left = {control->delay_ms / 1000, control->delay_ms % 1000 * 1000000};
        while (nanosleep(&left, &left) != 0) {
        }
    }
    if (fails(SYNC)) {
        errno = control->error == 0 ? EIO : control->error;
        note('F', name, NULL, number, is_folder, NULL, 0);
        return -1;
    }
    /* Nothing is really forced: the trace says what a disk would hold. */
    note('S', name, NULL, number, is_folder, NULL, 0);
    return 0;
}

int fsync(int fd) {
    return forced(fd, SYS_fsync);
}

int fdatasync(int fd) {
    return forced(fd, SYS_fdatasync);
}

int ftruncate64(int fd, off64_t length) {
    const char *name = watched(fd);
    if (name && fails(CUT)) {
        errno = control->error == 0 ? EIO : control->error;
        return -1;
    }
    int done = (int) syscall(SYS_ftruncate, fd, length);
    if (name && done == 0) {
        note('Z', name, NULL, number_of(fd, NULL), length, NULL, 0);
    }
    return done;
}

static int refused(const char *path, enum kind kind) {
    if (watched_path(path) && fails(kind)) {
        errno = control->error == 0 ? EIO : control->error;
        return 1;
    }
    return 0;
}

int unlink(const char *path) {
    if (refused(path, REMOVE)) {
        return -1;
    }
    int done = (int) syscall(SYS_unlink, path);
    if (done == 0 && watched_path(path)) {
        note('U', path, NULL, 0, 0, NULL, 0);
    }
    return done;
}

int rmdir(const char *path) {
    if (refused(path, REMOVE)) {
        return -1;
    }
    int done = (int) syscall(SYS_rmdir, path);
    if (done == 0 && watched_path(path)) {
        note('X', path, NULL, 0, 0, NULL, 0);
    }
    return done;
}

int mkdir(const char *path, mode_t mode) {
    if (refused(path, NAME)) {
        return -1;
    }
    int done = (int) syscall(SYS_mkdir, path, mode);
    if (done == 0 && watched_path(path)) {
        note('D', path, NULL, 0, 0, NULL, 0);
    }
    return done;
}

int rename(const char *from, const char *to) {
    if (refused(to, NAME)) {
        return -1;
    }
    int done = (int) syscall(SYS_rename, from, to);
    if (done == 0 && watched_path(to)) {
        note('R', from, to, 0, 0, NULL, 0);
    }
    return done;
}

int link(const char *from, const char *to) {
    if (refused(to, NAME)) {
        return -1;
    }
    int done = (int) syscall(SYS_link, from, to);
    if (done == 0 && watched_path(to)) {
        note('L', from, to, 0, 0, NULL, 0);
    }
    return done;
}

/* The program then copies with reads and writes, which are seen. */
ssize_t sendfile64(int out, int in, off64_t *at, size_t n) {
    if (watched(out)) {
        errno = EINVAL;
        return -1;
    }
    return syscall(SYS_sendfile, out, in, at, n);
}

int fcntl(int fd, int command, ...) {
    va_list rest;
    va_start(rest, command);
    void *argument = va_arg(rest, void *);
    va_end(rest);
    int locks = command == F_SETLK && argument && ((struct flock *) argument)->l_type != F_UNLCK;
    if (locks && watched(fd) && fails(LOCK)) {
        errno = control->error == 0 ? EAGAIN : control->error;
        return -1;
    }
    return (int) syscall(SYS_fcntl, fd, command, argument);
}

void *mmap64(void *at, size_t n, int rights, int flags, int fd, off64_t from) {
    if (!(flags & MAP_ANONYMOUS) && watched(fd) && fails(MAP)) {
        errno = control->error == 0 ? ENOMEM : control->error;
        return MAP_FAILED;
    }
    return (void *) syscall(SYS_mmap, at, n, rights, flags, fd, from);
}

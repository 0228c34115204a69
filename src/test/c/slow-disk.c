/* Makes every forced write of a program last longer by SLOW_DISK_MS milliseconds; loaded before it with LD_PRELOAD. */
#define _GNU_SOURCE
#include <stdlib.h>
#include <sys/syscall.h>
#include <time.h>
#include <unistd.h>

static void wait_for_the_disk(void) {
    const char *told = getenv("SLOW_DISK_MS");
    long ms = told ? atol(told) : 0;
    struct timespec left = {ms / 1000, ms % 1000 * 1000000};
    while (nanosleep(&left, &left) != 0) {
    }
}

int fsync(int fd) {
    wait_for_the_disk();
    return (int) syscall(SYS_fsync, fd);
}

int fdatasync(int fd) {
    wait_for_the_disk();
    return (int) syscall(SYS_fdatasync, fd);
}

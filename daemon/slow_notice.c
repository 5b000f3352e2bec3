#include "slow_notice.h"

#include <errno.h>
#include <signal.h>
#include <string.h>
#include <unistd.h>

enum { PATIENCE_S = 1 };

static const char *line_to_say;

/* Only what a signal may do: one write. What it says is no harm if it is lost. */
static void
on_alarm(int number)
{
    int before = errno;
    ssize_t written = write(STDERR_FILENO, line_to_say, strlen(line_to_say));

    (void)number;
    (void)written;
    errno = before;
}

void
slow_notice_begin(const char *line)
{
    struct sigaction action = {.sa_handler = on_alarm, .sa_flags = SA_RESTART};

    if (isatty(STDERR_FILENO) != 1) {
        return;
    }
    line_to_say = line;
    (void)sigemptyset(&action.sa_mask);
    (void)sigaction(SIGALRM, &action, NULL);
    (void)alarm(PATIENCE_S);
}

void
slow_notice_end(void)
{
    if (line_to_say != NULL) {
        (void)alarm(0);
        (void)signal(SIGALRM, SIG_DFL);
        line_to_say = NULL;
    }
}

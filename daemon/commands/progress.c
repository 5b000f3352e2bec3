#include "progress.h"

#include <unistd.h>

enum { BAR_WIDTH = 50 };

struct progress
progress_begin(FILE *out, const char *what)
{
    return (struct progress){isatty(fileno(out)) == 1 ? out : NULL, what, -1};
}

void
progress_show(struct progress *progress, size_t done, size_t all)
{
    int percent = all == 0 ? 100 : (int)(done * 100 / all);
    int i;

    if (progress->out == NULL || percent == progress->shown) {
        return;
    }
    progress->shown = percent;
    fprintf(progress->out, "\r%-9s [", progress->what);
    for (i = 0; i < BAR_WIDTH; i++) {
        fputc(i < percent * BAR_WIDTH / 100 ? '#' : '.', progress->out);
    }
    fprintf(progress->out, "] %3d %%", percent);
    fflush(progress->out);
}

void
progress_end(struct progress *progress)
{
    if (progress->out != NULL && progress->shown >= 0) {
        fputc('\n', progress->out);
    }
    progress->out = NULL;
}

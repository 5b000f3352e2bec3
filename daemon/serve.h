/*
 * The daemon: put together, run until it is told to stop, taken apart.
 */
#ifndef SERVE_H
#define SERVE_H

/* Runs it in the foreground. Returns an exit code; what went wrong is in the log. */
int serve_run(const char *config_file);

#endif

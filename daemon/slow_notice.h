/*
 * A line for whoever waits at a terminal if a command's start takes longer than a second, so that
 * nobody takes it for dead. Where standard error is no terminal nothing is printed. One at a time;
 * uses SIGALRM, so not beside the running daemon.
 */
#ifndef SLOW_NOTICE_H
#define SLOW_NOTICE_H

/* `line`, with its newline, must stay until slow_notice_end(). */
void slow_notice_begin(const char *line);
void slow_notice_end(void);

#endif

/* Exit codes of hutbell; the manual page has the same table. */
#ifndef EXIT_CODE_H
#define EXIT_CODE_H

enum exit_code {
    EXIT_CODE_DONE = 0,
    EXIT_CODE_FAILED = 1, /* it did not work, or what it read has faults; standard error says why */
    EXIT_CODE_USAGE = 2   /* the command line was not understood */
};

#endif

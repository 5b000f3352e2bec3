/*
 * usage: keep_content KB CACHE
 *
 * Makes this content ready and keeps it there, unless it is there already: tests find it then
 * (kb/reader/cache.h), and a sanitizer would take a minute for it each time.
 */
#include <stdio.h>
#include <stdlib.h>

#include "kb.h"

int
main(int argc, char **argv)
{
    struct faults faults = {0};
    struct fault fault;
    struct kb *kb = NULL;
    int status = EXIT_FAILURE;

    if (argc != 3) {
        fprintf(stderr, "usage: keep_content KB CACHE\n");
    } else if (kb_load(argv[1], argv[2], &kb, &faults) != 0) {
        fprintf(stderr, "%s\n", faults.count == 0 ? argv[1] : faults.list[0].text);
    } else if (kb_keep(kb, argv[2], KEPT_LIVE, &fault) != 0) {
        fprintf(stderr, "%s\n", fault.text);
    } else {
        status = EXIT_SUCCESS;
    }
    kb_free(kb);
    faults_release(&faults);
    return status;
}

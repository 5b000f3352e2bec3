/* What `hutbell check` says of some thousand warnings for who writes the content: how many. */
#ifndef CHECK_CONTENT_H
#define CHECK_CONTENT_H

#include <stdio.h>

#include "remark.h"

enum { CHECK_TOPICS_SHOWN = 12 };

/* Of each kind how many there are, then the topics and signs with the most of them. Nothing if
 * there are none. */
void check_print_content(FILE *out, const struct remarks *remarks);

#endif

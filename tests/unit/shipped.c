#include "shipped.h"

#include <check.h>
#include <stdlib.h>

#include "memory.h"

static struct kb *kb;
static struct workspace *workspace;

void
shipped_begin(void)
{
    const char *root = getenv("SOURCE_ROOT");
    char *folder = memory_format(NULL, "%s/kb", root == NULL ? "." : root);
    struct faults faults = {0};

    ck_assert_msg(kb_load(folder, NULL, &kb, &faults) == 0, "%s",
                  faults.count == 0 ? "" : faults.list[0].text);
    faults_release(&faults);
    talloc_free(folder);
    workspace = workspace_new();
}

void
shipped_end(void)
{
    workspace_free(workspace);
    kb_free(kb);
}

const struct kb *
shipped_kb(void)
{
    return kb;
}

bool
shipped_look(const char *text, struct sign_match *match)
{
    return kb_find_signs(kb, workspace, text, match, 1) > 0;
}

#include "shipped.h"

#include <check.h>
#include <fcntl.h>
#include <stdlib.h>
#include <sys/file.h>
#include <unistd.h>

#include "memory.h"

static struct kb *kb;
static struct workspace *workspace;

struct kb *
shipped_load(void)
{
    const char *build = getenv("BUILD_ROOT");
    char *folder = memory_format(NULL, "%s/kb", getenv("SOURCE_ROOT"));
    char *cache = memory_format(NULL, "%s/kb-cache", build);
    int lock = open(build, O_RDONLY | O_DIRECTORY | O_CLOEXEC);
    struct faults faults = {0};
    struct fault fault;
    struct kb *loaded;

    ck_assert_msg(build != NULL, "BUILD_ROOT names the folder where what is made is kept");
    ck_assert_int_eq(flock(lock, LOCK_EX), 0);
    ck_assert_msg(kb_load(folder, cache, &loaded, &faults) == 0, "%s",
                  faults.count == 0 ? "" : faults.list[0].text);
    ck_assert_int_eq(kb_keep(loaded, cache, KEPT_LIVE, &fault), 0);
    close(lock);
    faults_release(&faults);
    talloc_free(cache);
    talloc_free(folder);
    return loaded;
}

void
shipped_begin(void)
{
    kb = shipped_load();
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

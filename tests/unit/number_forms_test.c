/* Many ways of saying the same: every line of number_forms.txt is read as it says behind "=>". */
#include "fixture.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "memory.h"
#include "told_words.h"

enum { LINE_MAX_BYTES = 1024 };

START_TEST(every_form_is_read)
{
    void *arena = talloc_new(NULL);
    FILE *file =
        fopen(memory_format(arena, "%s/tests/unit/number_forms.txt", getenv("SOURCE_ROOT")), "r");
    char line[LINE_MAX_BYTES], *wrong = memory_copy(arena, "");
    size_t count = 0;

    ck_assert_ptr_nonnull(file);
    while (fgets(line, sizeof line, file) != NULL) {
        char *want = strstr(line, " => ");
        const char *read;

        if (line[0] == '#' || line[0] == '\n') {
            continue;
        }
        ck_assert_msg(want != NULL, "no \" => \" in %s", line);
        *want = '\0';
        want += strlen(" => ");
        want[strcspn(want, "\n")] = '\0';
        read = told_words(arena, line);
        count++;
        if (strcmp(read, want) != 0) {
            memory_append(&wrong, "\n\"%s\" was read as \"%s\", not \"%s\"", line, read, want);
        }
    }
    (void)fclose(file);
    ck_assert_msg(wrong[0] == '\0', "%s", wrong);
    ck_assert_uint_gt(count, 0);
    talloc_free(arena);
}
END_TEST

int
main(void)
{
    TCase *tests = tcase_create("number forms");

    tcase_add_test(tests, every_form_is_read);
    return fixture_run(tests);
}

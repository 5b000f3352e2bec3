#include "small_kb.h"

#include <check.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

const struct small_kb_file small_kb[SMALL_KB_COUNT] = {
    {"equipment/wren.json", "{\"name\":\"Wren\",\"battery\":{\"retirement_health\":80}}"},
    {"signs/en/bad-tea.md",
     SIGN("Bad tea", "emergency", "bad tea") "Call {emergency} now.\n\n## Said as\n\n- tea is "
                                             "poisoned\n- taste / smell + almonds\n"},
    {"signs/en/cold-tea.md",
     SIGN("Cold tea", "clinical", "cold tea") "We will call.\n\n## Said as\n\n- tea is cold\n"},
    {"signs/en/low-reading.md", SIGN("Low", "emergency", "low") "Call {emergency} now.\n"},
    {"signs/en/reading.md", SIGN("Reading", "clinical", "reading") "We will call.\n"},
    {"signs/es/bad-tea.md",
     SIGN("Malo", "emergency",
          "te malo") "Llame al {emergency}.\n\n## Said as\n\n- te envenenado\n"},
    {"topics/en/kettle.md",
     "# Kettle\n\nFill it.\n\n## Asked as\n\n- how do i boil water\n\n## Only if\n\n- unit wren\n"},
    {"topics/en/milk.md", "# Milk\n\nIn the fridge.\n\n## Asked as\n\n- where is the milk\n"},
    {"topics/es/milk.md", "# Leche\n\nEn la nevera.\n\n## Asked as\n\n- donde esta la leche\n"},
    {"words/en-known.txt", "# right as spelt\nteal\n"},
};

char small_kb_folder[] = "/tmp/small_kb_XXXXXX";

void
small_kb_write(const char *name, const char *text, size_t length)
{
    char path[256];
    char *slash;
    FILE *file;

    snprintf(path, sizeof(path), "%s/%s", small_kb_folder, name);
    for (slash = path + strlen(small_kb_folder) + 1; (slash = strchr(slash, '/')) != NULL;
         slash++) {
        *slash = '\0';
        mkdir(path, 0700);
        *slash = '/';
    }
    file = fopen(path, "wb");
    ck_assert_ptr_nonnull(file);
    ck_assert_uint_eq(fwrite(text, 1, length, file), length);
    ck_assert_int_eq(fclose(file), 0);
}

void
small_kb_lay(void)
{
    size_t i;

    strcpy(small_kb_folder + strlen(small_kb_folder) - 6, "XXXXXX");
    ck_assert_ptr_nonnull(mkdtemp(small_kb_folder));
    for (i = 0; i < SMALL_KB_COUNT; i++) {
        small_kb_write(small_kb[i].name, small_kb[i].text, strlen(small_kb[i].text));
    }
}

void
small_kb_remove(void)
{
    char command[128];

    snprintf(command, sizeof(command), "rm -r %s", small_kb_folder);
    ck_assert_int_eq(system(command), 0);
}

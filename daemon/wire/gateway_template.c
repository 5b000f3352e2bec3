/* The template that says what a gateway's signature is made over. */
#include "gateway_parts.h"

#include <string.h>

#include "memory.h"

/* Reads what stands between braces. */
static int
read_name(const char *name, struct template_part *part, struct fault *fault)
{
    static const char header[] = "header:";

    part->text = "";
    if (strncmp(name, header, strlen(header)) == 0 && name[strlen(header)] != '\0') {
        part->kind = TEMPLATE_HEADER;
        part->text = name + strlen(header);
    } else if (strcmp(name, "url") == 0) {
        part->kind = TEMPLATE_URL;
    } else if (strcmp(name, "body") == 0) {
        part->kind = TEMPLATE_BODY;
    } else if (strcmp(name, "sorted-form") == 0) {
        part->kind = TEMPLATE_SORTED_FORM;
    } else {
        fault_set(fault, "{%s} is unknown; expected {header:NAME}, {url}, {body} or {sorted-form}",
                  name);
        return -1;
    }
    return 0;
}

int
gateway_template_read(void *arena, const char *text, struct template_part **parts, size_t *count,
                      struct fault *fault)
{
    *parts = NULL;
    *count = 0;
    while (*text != '\0') {
        size_t length = strcspn(text, "{");
        struct template_part part = {TEMPLATE_LITERAL, NULL};

        if (length > 0) {
            part.text = memory_copy_n(arena, text, length);
        } else {
            length = strcspn(text, "}");
            if (text[length] == '\0') {
                fault_set(fault, "a brace is not closed in \"%s\"", text);
                return -1;
            }
            if (read_name(memory_copy_n(arena, text + 1, length - 1), &part, fault) != 0) {
                return -1;
            }
            length++;
        }
        *parts = memory_grow(arena, struct template_part, *parts, *count);
        (*parts)[(*count)++] = part;
        text += length;
    }
    return 0;
}

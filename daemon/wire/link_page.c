#include "link_page.h"

#include <glib.h>

#include "alert_text.h"
#include "memory.h"

const char link_page_policy[] =
    "default-src 'none'; style-src 'unsafe-inline'; form-action 'self'; "
    "base-uri 'none'; frame-ancestors 'none'";

static const char head[] =
    "<!DOCTYPE html>\n<html lang=\"en\"><head><meta charset=\"utf-8\">"
    "<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">"
    "<meta name=\"robots\" content=\"noindex\"><title>Alert</title><style>"
    "body{font:1.25rem/1.5 sans-serif;max-width:32rem;margin:1rem auto;padding:0 1rem;"
    "background:#fff;color:#111}button,textarea{font:inherit;width:100%;box-sizing:border-box;"
    "padding:.75rem;margin:.25rem 0 1rem;border:2px solid #111;border-radius:.25rem}"
    "button{background:#111;color:#fff;min-height:3.5rem}"
    "dt{font-weight:bold}dd{margin:0 0 .5rem;overflow-wrap:anywhere}"
    "button:focus,textarea:focus{outline:4px solid #06c}"
    "</style></head><body>\n";

static const char tail[] = "</body></html>\n";

static char *
escaped(void *arena, const char *text)
{
    char *html = g_markup_escape_text(text, -1);
    char *copy = memory_copy(arena, html);

    g_free(html);
    return copy;
}

static void
append_facts(void *arena, char **page, const struct alert_facts *facts)
{
    size_t i;

    memory_append(page, "<dl>");
    for (i = 0; i < facts->count; i++) {
        const struct alert_fact *fact = &facts->list[i];
        const char *value = escaped(arena, fact->value);

        memory_append(page, "<dt>%s</dt>", escaped(arena, fact->what));
        if (fact->is_phone) {
            memory_append(page, "<dd><a href=\"tel:%s\">%s</a></dd>\n", value, value);
        } else {
            memory_append(page, "<dd>%s</dd>\n", value);
        }
    }
    memory_append(page, "</dl>\n");
}

char *
link_page_ask(void *arena, const struct alert_row *alert, const struct alert_facts *facts,
              const char *words, const char *token)
{
    char *page = memory_copy(arena, head);

    if (words != NULL) {
        memory_append(&page, "<p role=\"status\"><strong>%s</strong></p>\n", escaped(arena, words));
    }
    memory_append(&page, "<h1>%s</h1>\n", escaped(arena, alert_line(arena, alert)));
    memory_append(&page,
                  "<form method=\"post\" action=\"%s\">"
                  "<button name=\"do\" value=\"take\">I take it</button></form>\n"
                  "<form method=\"post\" action=\"%s\">"
                  "<label for=\"outcome\">What happened, in a few words:</label>"
                  "<textarea id=\"outcome\" name=\"outcome\" rows=\"3\" maxlength=\"500\" required>"
                  "</textarea><button name=\"do\" value=\"close\">%s</button></form>\n",
                  escaped(arena, token), escaped(arena, token),
                  alert->renter_count > 0 ? "All of it is settled" : "It is settled");
    if (facts != NULL) {
        append_facts(arena, &page, facts);
    } else {
        memory_append(&page,
                      "<form method=\"post\" action=\"%s\"><button name=\"do\" value=\"show\">"
                      "Show all about it</button></form>\n",
                      escaped(arena, token));
    }
    memory_append(&page, "%s", tail);
    return page;
}

char *
link_page_tell(void *arena, const char *words)
{
    return memory_format(arena, "%s<h1>%s</h1>\n%s", head, escaped(arena, words), tail);
}

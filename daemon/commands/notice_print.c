#include "notice_print.h"

#include <stdio.h>
#include <string.h>

#include "memory.h"
#include "parts.h"
#include "rental_record.h"
#include "rental_rows.h"
#include "say.h"

static const char *const language_names[LANGUAGE_COUNT] = {
    [LANGUAGE_EN] = "English", [LANGUAGE_ES] = "Spanish"};

static const char *
or_dash(const char *text)
{
    return text != NULL ? text : "-";
}

static void
print_who(const struct rental *rental, const char *phone, const char *what)
{
    printf("  %-10s %-12s %-28s %-15s %s\n", rental->rental_id, or_dash(rental->first_name),
           or_dash(rental->place), phone != NULL ? phone : "", what);
}

/* By which number a rental can be rung; whoever is deaf never, by their own. */
static void
print_ring(const struct rental *rental)
{
    bool any = false;
    size_t i;

    for (i = 0; i < rental->phone_count; i++) {
        const struct phone *phone = &rental->phones[i];

        if (phone->reach == REACH_ANY || phone->reach == REACH_LANDLINE) {
            printf("             ring %s%s%s\n", phone->number, phone->whose != NULL ? ", " : "",
                   phone->whose != NULL ? phone->whose : "");
            any = true;
        } else {
            printf("             never ring %s (%s)\n", phone->number, reach_name(phone->reach));
        }
    }
    if (rental->desk_phone != NULL) {
        printf("             desk of the lodge: %s\n", rental->desk_phone);
    } else if (!any) {
        printf("             no number to ring: somebody has to go there\n");
    }
    if (rental->emergency_contact != NULL) {
        printf("             emergency contact: %s\n", rental->emergency_contact);
    }
}

/* ---- A plan --------------------------------------------------------------------------------- */

static void
print_texts(const struct notice *notice)
{
    int language;

    for (language = 0; language < LANGUAGE_COUNT; language++) {
        const char *text = notice->texts[language];
        struct parts parts;

        if (text == NULL) {
            continue;
        }
        parts = parts_count(text);
        printf("%s, %zu part%s%s, to %zu phone%s:\n    %s\n\n", language_names[language],
               parts.parts, parts.parts == 1 ? "" : "s",
               parts.gsm7 ? "" : " (a letter or sign in it makes it cost about twice as much)",
               notice->texted_in[language], notice->texted_in[language] == 1 ? "" : "s", text);
    }
}

/* The last phone of a rental of which none is texted. */
static bool
ends_unreached(const struct notice *notice, size_t at)
{
    const struct rental *rental = notice->targets[at].rental;
    size_t i;

    if (at + 1 < notice->count && notice->targets[at + 1].rental == rental) {
        return false;
    }
    for (i = at + 1; i > 0 && notice->targets[i - 1].rental == rental; i--) {
        if (notice->targets[i - 1].hindrance == NULL) {
            return false;
        }
    }
    return true;
}

void
notice_print_plan(void *arena, const struct config *config, const struct notice *notice,
                  int64_t now_utc_s)
{
    size_t i;

    print_texts(notice);
    for (i = 0; i < notice->count; i++) {
        const struct notice_target *target = &notice->targets[i];

        if (target->hindrance == NULL) {
            print_who(target->rental, target->phone->number,
                      target->send_utc_s <= now_utc_s
                          ? "now"
                          : say_day(arena, &config->zone, LANGUAGE_EN, target->send_utc_s));
        }
    }
    for (i = 0; i < notice->count; i++) {
        const struct notice_target *target = &notice->targets[i];

        if (target->hindrance == NULL) {
            continue;
        }
        print_who(target->rental, target->phone != NULL ? target->phone->number : NULL,
                  memory_format(arena, "NOT TEXTED: %s", target->hindrance));
        if (ends_unreached(notice, i)) {
            print_ring(target->rental);
        }
    }
}

/* ---- What was sent -------------------------------------------------------------------------- */

int
notice_print_all(struct store *store, void *arena, const struct config *config, struct fault *fault)
{
    struct notice_row *rows;
    size_t count, i;

    if (notice_rows_all(store, arena, &rows, &count, fault) != 0) {
        return -1;
    }
    for (i = 0; i < count; i++) {
        printf("%lld  %s%s  %s\n    %s\n", (long long)rows[i].number,
               say_day(arena, &config->zone, LANGUAGE_EN, rows[i].at_utc_s),
               rows[i].is_urgent ? ", urgent" : "", rows[i].picked, rows[i].english);
    }
    if (count == 0) {
        printf("no notice was sent yet; hutbell notice --help tells how\n");
    }
    return 0;
}

enum group { GROUP_ANSWERED, GROUP_WAITS, GROUP_TEXTED, GROUP_RING, GROUP_COUNT };

static const char *const headings[GROUP_COUNT] = {
    [GROUP_ANSWERED] = "Answered",
    [GROUP_WAITS] = "Not sent yet",
    [GROUP_TEXTED] = "Texted, no answer yet; ring them if it cannot wait",
    [GROUP_RING] = "Not reached by text; ring them"};

static bool
is_event(const struct notice_phone *phone, const char *event)
{
    return phone->event != NULL && strcmp(phone->event, event) == 0;
}

static enum group
group_of(const struct notice_phone *phone)
{
    if (phone->answered_utc_s != 0) {
        return GROUP_ANSWERED;
    }
    if (phone->hindrance != NULL) {
        return GROUP_RING;
    }
    if (phone->next_utc_s != 0) {
        return GROUP_WAITS;
    }
    return is_event(phone, "accepted") || is_event(phone, "delivered") ? GROUP_TEXTED : GROUP_RING;
}

/* What became of it, in words. */
static const char *
state_words(void *arena, const struct config *config, const struct notice_phone *phone)
{
    const struct zone *zone = &config->zone;

    switch (group_of(phone)) {
    case GROUP_ANSWERED:
        return memory_format(arena, "answered %s",
                             say_day(arena, zone, LANGUAGE_EN, phone->answered_utc_s));
    case GROUP_WAITS:
        return memory_format(arena, "%s %s", phone->event != NULL ? "tried again" : "goes out",
                             say_day(arena, zone, LANGUAGE_EN, phone->next_utc_s));
    case GROUP_TEXTED:
        return phone->event;
    default:
        return phone->hindrance != NULL      ? phone->hindrance
               : is_event(phone, "replaced") ? "wants no texts since"
               : is_event(phone, "given-up") ? "could not be sent in time"
                                             : or_dash(phone->event);
    }
}

/* As the record is now. */
static int
load_rental(struct store *store, void *arena, const char *rental_id, struct rental *rental,
            struct fault *fault)
{
    struct rental_row row;
    bool found;

    *rental = (struct rental){.rental_id = rental_id};
    if (rental_rows_newest(store, arena, rental_id, &row, &found, fault) != 0) {
        return -1;
    }
    if (found) {
        (void)rental_record_parse(arena, row.json, rental);
    }
    return 0;
}

static int
print_group(struct store *store, void *arena, const struct config *config,
            const struct notice_phone *phones, size_t count, enum group group, struct fault *fault)
{
    struct rental rental;
    size_t i, used = 0;

    for (i = 0; i < count; i++) {
        if (group_of(&phones[i]) != group) {
            continue;
        }
        if (used++ == 0) {
            printf("\n%s:\n", headings[group]);
        }
        if (load_rental(store, arena, phones[i].rental_id, &rental, fault) != 0) {
            return -1;
        }
        print_who(&rental, phones[i].phone, state_words(arena, config, &phones[i]));
        if (group == GROUP_TEXTED || group == GROUP_RING) {
            print_ring(&rental);
        }
    }
    return 0;
}

int
notice_print_one(struct store *store, void *arena, const struct config *config, int64_t number,
                 struct fault *fault)
{
    struct notice_row row;
    struct notice_phone *phones;
    size_t count, i, answered = 0;
    bool found;
    int group;

    if (notice_rows_find(store, arena, number, &row, &found, fault) != 0 ||
        notice_rows_phones(store, arena, number, &phones, &count, fault) != 0) {
        return -1;
    }
    if (!found) {
        fault_set(fault, "there is no notice %lld; see hutbell notice", (long long)number);
        return -1;
    }
    for (i = 0; i < count; i++) {
        answered += phones[i].answered_utc_s != 0;
    }
    printf("notice %lld, %s%s, to %s\n    %s\n%zu of %zu answered\n", (long long)number,
           say_day(arena, &config->zone, LANGUAGE_EN, row.at_utc_s),
           row.is_urgent ? ", urgent" : "", row.picked, row.english, answered, count);
    for (group = 0; group < GROUP_COUNT; group++) {
        if (print_group(store, arena, config, phones, count, (enum group)group, fault) != 0) {
            return -1;
        }
    }
    return 0;
}

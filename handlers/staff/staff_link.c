/*
 * A number that nobody knows turns out to be a renter's, or a daughter's: once staff have checked
 * that by voice, one word makes it a phone of the rental, "LINK 12 R-34" by the alert that it made
 * or "LINK +1… R-34". UNLINK takes it back. What is written is read from the text itself, for an id
 * may hold any sign.
 */
#include "staff_order.h"

#include <string.h>

#include "memory.h"
#include "say.h"
#include "steps.h"

static const char blanks[] = " \t\r\n";

enum { ALERT_DIGITS_MAX = 6, PHONE_DIGITS_MIN = 7, PHONE_DIGITS_MAX = 15 /* ITU-T E.164 */ };

/* The word, the last word, and what stands between them; "" for what is not there. */
struct link_text {
    enum phone_link_step step;
    const char *target, *rental_id;
};

static bool
read_link(const struct asked *whole, struct link_text *link)
{
    const char *text = whole->text + strspn(whole->text, blanks);
    size_t word = strcspn(text, blanks);
    size_t from = word + strspn(text + word, blanks);
    size_t end = strlen(text), last;

    while (end > from && strchr(" \t\r\n.,", text[end - 1]) != NULL) {
        end--;
    }
    for (last = end; last > from && strchr(blanks, text[last - 1]) == NULL; last--) {
    }
    *link = (struct link_text){.step = staff_is_word(text, word, "link")     ? PHONE_LINK_ADD
                                       : staff_is_word(text, word, "unlink") ? PHONE_LINK_END
                                                                             : PHONE_LINK_NONE,
                               .target = memory_copy_n(whole->arena, text + from, last - from),
                               .rental_id = memory_copy_n(whole->arena, text + last, end - last)};
    return link->step != PHONE_LINK_NONE;
}

/* ---- Which phone --------------------------------------------------------------------------- */

/* "+1 (208) 555-0150" as "+12085550150"; NULL if it is no whole number with its country. */
static const char *
phone_of(void *arena, const char *target)
{
    char digits[PHONE_DIGITS_MAX + 2] = "+";
    size_t used = 1;

    if (*target != '+') {
        return NULL;
    }
    for (target++; *target != '\0'; target++) {
        if (*target >= '0' && *target <= '9') {
            if (used > PHONE_DIGITS_MAX) {
                return NULL;
            }
            digits[used++] = *target;
        } else if (strchr(" -.()", *target) == NULL) {
            return NULL;
        }
    }
    return used > PHONE_DIGITS_MIN ? memory_copy_n(arena, digits, used) : NULL;
}

/* The open alert that "12" or "#12" names, or the only one if nothing is named. */
static const struct open_alert *
alert_of(const struct context *context, const char *target)
{
    size_t digits, i;
    int64_t number = 0;

    if (*target == '\0') {
        return context->alert_count == 1 ? &context->alerts[0] : NULL;
    }
    target += *target == '#';
    digits = strspn(target, "0123456789");
    if (digits == 0 || digits > ALERT_DIGITS_MAX ||
        strspn(target + digits, blanks) != strlen(target + digits)) {
        return NULL;
    }
    for (i = 0; i < digits; i++) {
        number = number * 10 + (target[i] - '0');
    }
    for (i = 0; i < context->alert_count; i++) {
        if (context->alerts[i].number == number) {
            return &context->alerts[i];
        }
    }
    return NULL;
}

static const char *
linked_phone(const struct asked *whole, const struct link_text *link)
{
    const char *phone = phone_of(whole->arena, link->target);
    const struct open_alert *alert = phone == NULL ? alert_of(whole->context, link->target) : NULL;

    return alert != NULL ? alert->phone : phone;
}

/* ---- What is said -------------------------------------------------------------------------- */

static bool
is_in_record(const struct rental *rental, const char *phone)
{
    size_t i;

    for (i = 0; i < rental->phone_count; i++) {
        if (strcmp(rental->phones[i].number, phone) == 0) {
            return true;
        }
    }
    return false;
}

static void
reply(const struct asked *whole, struct verdict *verdict, enum phrase phrase, const char *first,
      const char *second, const char *third)
{
    struct answer *answer = verdict_add(verdict, ANSWER_OFFICE, ROUTE_STAFF, "staff");

    answer->text =
        say(whole->arena, whole->context->house, LANGUAGE_EN, phrase, first, second, third, NULL);
}

bool
staff_link_decide(const struct asked *whole, struct verdict *verdict)
{
    const struct rental *rental = whole->context->named_rental;
    struct link_text link;
    const char *phone;

    if (!read_link(whole, &link)) {
        return false;
    }
    phone = linked_phone(whole, &link);
    if (phone == NULL || link.rental_id[0] == '\0') {
        reply(whole, verdict, SAY_LINK_HELP, NULL, NULL, NULL);
    } else if (rental == NULL) {
        reply(whole, verdict, SAY_LINK_NO_RENTAL, link.rental_id, NULL, NULL);
    } else if (is_in_record(rental, phone)) {
        reply(whole, verdict, SAY_LINK_IN_RECORD, phone, rental->rental_id, NULL);
    } else if (link.step == PHONE_LINK_ADD && rental->state == RENTAL_CLOSED) {
        reply(whole, verdict, SAY_LINK_CLOSED, rental->rental_id, NULL, NULL);
    } else {
        verdict->phone_link = (struct phone_link){link.step, phone, rental->rental_id};
        reply(whole, verdict, link.step == PHONE_LINK_ADD ? SAY_LINKED : SAY_UNLINKED, phone,
              rental->rental_id, rental->first_name);
    }
    return true;
}

/*
 * The renter reads a word or sign off the display. What it means is the unit's own table, never a
 * guess; and if oxygen stops with it, staff are called as for a unit that stopped.
 */
#include "display.h"

#include <string.h>

#include "memory.h"
#include "say.h"
#include "steps.h"

enum { READ_BEFORE = 3, READ_AFTER = 2 };

static const char id_display[] = "display";

/* "What if it says" asks for a plan: nobody is called. */
static const char supposed[] = "what if|in case|if it says|if it shows|que pasa si|si dice|si sale";
static const char read_before[] =
    " say says said saying screen display shows show showing reads read message alarm whats "
    "pantalla dice dijo diciendo sale salio salen muestra aparece aparecio significa marca "
    "mensaje letrero alarma ";
static const char read_after[] = " mean means meaning message alarm alert warning screen display "
                                 "flashing blinking significa mensaje alarma pantalla ";
static const char around_alone[] =
    " the a it its is on in and now still just please pls help ok hi hello what huh again my this "
    "that little el la un una en y ahora ya ayuda por favor hola que es eso ";
static const char symbols[] = " symbol sign icon picture light simbolo ";

static bool
is_small(char letter)
{
    return letter >= 'a' && letter <= 'z';
}

static bool
has_words(const struct tokens *tokens, size_t at, const struct tokens *words)
{
    size_t i;

    for (i = 0; i < words->count; i++) {
        const char *word = words->list[i].text;

        if (!token_is(tokens, at + i, word) &&
            !(strcmp(word, "symbol") == 0 && token_among(tokens, at + i, symbols))) {
            return false;
        }
    }
    return words->count > 0;
}

static bool
has_small_letter(const char *text, size_t start, size_t end)
{
    size_t i;

    for (i = start; i < end && text[i] != '\0'; i++) {
        if (is_small(text[i])) {
            return true;
        }
    }
    return false;
}

static bool
is_alone(const struct tokens *tokens, size_t at, size_t after)
{
    size_t i;

    for (i = 0; i < tokens->count; i++) {
        if ((i < at || i >= after) && tokens->list[i].kind != TOKEN_SIGN &&
            !token_among(tokens, i, around_alone)) {
            return false;
        }
    }
    return true;
}

/* The words are ordinary ones as well ("clean filter", "plug in"): something must tell. */
static bool
is_read_off(const struct asked *asked, size_t at, size_t after)
{
    const struct tokens *tokens = &asked->tokens;
    size_t start = tokens->list[at].start, end = tokens->list[after - 1].end, i;

    for (i = at < READ_BEFORE ? 0 : at - READ_BEFORE; i < after + READ_AFTER; i++) {
        if ((i < at && token_among(tokens, i, read_before)) ||
            (i >= after && token_among(tokens, i, read_after))) {
            return true;
        }
    }
    if (token_among(tokens, after - 1, symbols)) {
        return true;
    }
    if (is_alone(tokens, at, after)) {
        /* in small letters it may ask how to do it */
        return !is_small(asked->text[tokens->list[after - 1].start]) ||
               asked->search.sureness != SURE ||
               strcmp(asked->search.best[0].topic->id, "alarm") == 0;
    }
    return !has_small_letter(asked->text, start, end) &&
           has_small_letter(asked->text, 0, strlen(asked->text));
}

const struct alarm *
display_shown(const struct asked *asked, const struct equipment *equipment, size_t *start,
              size_t *end)
{
    size_t i, at;

    for (i = 0; equipment != NULL && i < equipment->alarm_count; i++) {
        struct tokens words = tokens_read(asked->arena, equipment->alarms[i].shows);

        for (at = 0; at < asked->tokens.count; at++) {
            if (!has_words(&asked->tokens, at, &words) ||
                !is_read_off(asked, at, at + words.count)) {
                continue;
            }
            if (start != NULL) {
                *start = asked->tokens.list[at].start;
            }
            if (end != NULL) {
                *end = asked->tokens.list[at + words.count - 1].end;
            }
            return &equipment->alarms[i];
        }
    }
    return NULL;
}

/* What some unit of the house would show; `*other` if it is not the renter's own. */
static const struct alarm *
shown_by_any(const struct asked *asked, bool *other)
{
    const struct alarm *alarm = display_shown(asked, asked->equipment, NULL, NULL);
    const struct equipment *const *all;
    size_t count, i;

    *other = alarm == NULL;
    all = kb_equipment_all(asked->context->kb, &count);
    for (i = 0; i < count && alarm == NULL; i++) {
        alarm = display_shown(asked, all[i], NULL, NULL);
    }
    return alarm;
}

static void
call_staff(const struct asked *asked, struct verdict *verdict, const struct alarm *alarm,
           bool other)
{
    const char *brief = memory_format(asked->arena, "display %s", alarm->shows);

    if (tokens_have(&asked->tokens, supposed)) {
        return;
    }
    if (alarm->oxygen_stops) {
        verdict_alert(verdict, ALERT_URGENT, true, "trouble:display", brief);
    } else if (other || equipment_trouble_told(asked) != TROUBLE_NONE) {
        verdict_alert(verdict, ALERT_OFFICE, false, "trouble:display", brief);
    }
}

static const char *
meaning_of(const struct asked *asked, const struct alarm *alarm)
{
    if (asked->language == LANGUAGE_ES && alarm->meaning_es != NULL) {
        return alarm->meaning_es;
    }
    return say(asked->arena, asked->context->house, asked->language, SAY_IN_ENGLISH, alarm->meaning,
               NULL);
}

bool
display_decide(const struct asked *asked, struct verdict *verdict)
{
    const struct house *house = asked->context->house;
    enum trouble trouble = equipment_trouble_told(asked);
    const struct alarm *alarm;
    struct answer *answer;
    bool other;

    if (!asked_is_active_renter(asked) || power_asks_how_long(asked)) {
        return false;
    }
    alarm = shown_by_any(asked, &other);
    if (alarm == NULL) {
        return false;
    }
    if (trouble == TROUBLE_STOPPED || trouble == TROUBLE_DANGER) {
        return equipment_trouble_decide(asked, verdict); /* graver than what the display tells */
    }
    call_staff(asked, verdict, alarm, other);
    if (asked->which_rental) {
        open_question_which_rental(asked, verdict, NULL);
        return true;
    }
    answer = verdict_add(verdict, ANSWER_TOPIC,
                         alarm->oxygen_stops ? ROUTE_EQUIPMENT : ROUTE_ANSWER, id_display);
    answer->text =
        other ? say(asked->arena, house, asked->language, SAY_TROUBLE_OTHER, NULL)
              : say(asked->arena, house, asked->language,
                    verdict->alert.level >= ALERT_URGENT && alarm->oxygen_stops ? SAY_DISPLAY_URGENT
                                                                                : SAY_DISPLAY,
                    alarm->shows, meaning_of(asked, alarm), NULL);
    return true;
}
